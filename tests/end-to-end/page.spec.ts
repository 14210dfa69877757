import { CONTENT_POLICY } from "../../electron/content-policy";
import { expect, test } from "./app";

test("the page opens under the real policy without an error", async ({
  page,
}) => {
  const response = await page.goto("/");
  expect(response?.status()).toBe(200);
  expect(response?.headers()["content-security-policy"]).toBe(CONTENT_POLICY);
  await expect(page).toHaveTitle(/Turnwise/);
  await expect(page.getByText("Turnwise").first()).toBeVisible();
});

test.describe("under the real policy", () => {
  test.use({ expectedErrors: [/Content Security Policy/] });

  test("eval is refused in the page", async ({ page }) => {
    await page.goto("/");
    // In a callback of the page's own: what the test tool evaluates itself is
    // exempt from the policy.
    const outcome = await page.evaluate(
      () =>
        new Promise<string>((resolve) =>
          setTimeout(() => {
            try {
              resolve(`ran: ${String((0, eval)("1 + 1"))}`);
            } catch (error) {
              resolve(error instanceof Error ? error.name : "thrown");
            }
          }),
        ),
    );
    expect(outcome).toBe("EvalError");
  });

  test("an inline script and a foreign address are refused", async ({
    page,
  }) => {
    await page.goto("/");
    const outcome = await page.evaluate(async () => {
      const script = document.createElement("script");
      script.textContent = "document.title = 'taken over'";
      document.head.append(script);
      const foreign = await fetch("http://127.0.0.1:9/").then(
        () => "answered",
        () => "refused",
      );
      return { title: document.title, foreign };
    });
    expect(outcome.title).not.toContain("taken over");
    expect(outcome.foreign).toBe("refused");
  });
});

test("the page under localhost is refused, and the right address given", async ({
  page,
  app,
}) => {
  const wrong = app.address.replace("127.0.0.1", "localhost");
  const response = await page.request.get(wrong);
  expect(response.status()).toBe(421);
  expect(await response.text()).toContain(app.address);
});

test.describe("the script of the other places", () => {
  const SCRIPT = "**/assets/OtherPlace-*.js";

  test("is not needed at the desk, and is waited for in the place that was gone to", async ({
    page,
  }) => {
    let comes: (() => void) | undefined;
    const come = new Promise<void>((resolve) => (comes = resolve));
    await page.route(SCRIPT, async (route) => {
      await come;
      await route.continue();
    });
    await page.goto("/");
    await expect(page.locator("[data-case] svg").first()).toBeVisible();
    await page
      .getByRole("navigation", { name: "Places" })
      .getByRole("link", { name: "Progress" })
      .click();
    await expect(page).toHaveTitle("Progress · Turnwise");
    await expect(page.getByRole("main")).toBeFocused();
    await expect(page.getByRole("main")).toBeEmpty();
    comes?.();
    await expect(page.getByText("No answers to show yet")).toBeVisible();
    await expect(page.getByRole("main")).toBeFocused();
  });

  test("comes by itself, and all other places are in it", async ({ page }) => {
    const loads: string[] = [];
    page.on("request", (request) => {
      if (/OtherPlace-.*\.js$/.test(request.url())) loads.push(request.url());
    });
    const loaded = page.waitForResponse(SCRIPT);
    await page.goto("/");
    await (await loaded).finished();
    for (const [name, shows] of [
      ["Settings", "Your cube"],
      ["Cases", "How well you know a case"],
      ["Progress", "No answers to show yet"],
      ["Coach", "What Learner 1 practises"],
    ] as const) {
      await page
        .getByRole("navigation", { name: "Places" })
        .getByRole("link", { name })
        .click();
      await expect(page.getByText(shows).first()).toBeVisible();
    }
    expect(loads).toHaveLength(1);
  });

  test.describe("that cannot be had", () => {
    test.use({ expectedErrors: [/Failed to (load|fetch)/] });

    test("is told, and not an empty place", async ({ page }) => {
      await page.route(SCRIPT, (route) => route.abort());
      await page.goto("/#/progress");
      await expect(
        page.getByText(/Something went wrong in Turnwise itself\./),
      ).toBeVisible();
    });
  });
});
