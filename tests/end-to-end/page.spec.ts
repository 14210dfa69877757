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
