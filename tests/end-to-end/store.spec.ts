/** What a person sees when the store is refused, taken over, or shared by two windows. */
import { DATABASE_NAME } from "../../renderer/storage/database";
import { expect, test } from "./app";

test("where the browser gives no store, the page says why and what to do", async ({
  page,
}) => {
  await page.addInitScript(() => {
    IDBFactory.prototype.open = () => {
      throw new DOMException("refused", "SecurityError");
    };
  });
  await page.goto("/");
  const alert = page.getByRole("alert");
  await expect(alert).toContainText("no place to keep your answers");
  await expect(alert).toContainText("ordinary window, then reload");
  await expect(page.getByRole("button", { name: "Reload" })).toBeVisible();
});

test("a newer Turnwise takes the store over: the older window closes it, and then leaves it alone", async ({
  page,
  context,
}) => {
  await page.goto("/#/settings");
  await expect(page.getByText(/^0 answers/)).toBeVisible();
  const newer = await context.newPage();
  // A page of the same origin with nothing of this Turnwise in it.
  await newer.route("**/newer", (route) =>
    route.fulfill({
      contentType: "text/html",
      body: '<title>newer</title><link rel="icon" href="data:,">',
    }),
  );
  await newer.goto("/newer");
  const opened = await newer.evaluate(
    (name) =>
      new Promise<number>((resolve, reject) => {
        // The library multiplies its versions by ten: this is its version 9.
        const request = indexedDB.open(name, 90);
        request.onsuccess = () => {
          resolve(request.result.version);
          request.result.close();
        };
        request.onerror = () => reject(new Error(request.error?.name));
      }),
    DATABASE_NAME,
  );
  expect(opened).toBe(90);
  await expect(page.getByRole("alert")).toContainText("Reload this window");
  await page.getByRole("button", { name: "Reload" }).click();
  await expect(page.getByRole("alert")).toContainText(
    "A newer Turnwise has kept answers here (their form is number 9)",
  );
});

test("what is chosen in one window shows in the other at once", async ({
  page,
  context,
}) => {
  await page.goto("/#/cases/first-layer-corners");
  await expect(page.getByText("White on top.")).toBeVisible();
  const other = await context.newPage();
  await other.goto("/#/settings");
  await other.getByText("At the bottom", { exact: true }).click();
  await expect(page.getByText("White at the bottom.")).toBeVisible();
  await other.getByRole("button", { name: "Add a learner" }).click();
  await other.getByRole("textbox", { name: "Name of the new" }).fill("Ada");
  await other.keyboard.press("Enter");
  await page.goto("/#/settings");
  await expect(page.getByRole("radio", { name: "Ada" })).toBeVisible();
});
