import { render, screen } from "@testing-library/svelte";
import userEvent from "@testing-library/user-event";
import { describe, expect, it, vi } from "vitest";
import EditField from "../../../renderer/components/EditField.svelte";

describe("a field that keeps what is written", () => {
  it("hands on every letter of a text, and a number when it is whole", async () => {
    const onedit = vi.fn(() => undefined);
    render(EditField, { label: "Name", value: "", onedit });
    await userEvent.type(screen.getByLabelText("Name"), "ab");
    expect(onedit.mock.calls).toEqual([["a"], ["ab"]]);
    const onnumber = vi.fn(() => undefined);
    render(EditField, {
      label: "Target",
      value: "",
      kind: "number",
      onedit: onnumber,
    });
    await userEvent.type(screen.getByLabelText("Target"), "12{Tab}");
    expect(onnumber.mock.calls).toEqual([["12"]]);
  });

  it("says beside the field why a text is not kept, until it changes", async () => {
    const onedit = (text: string) =>
      text === "" ? "Write something." : undefined;
    const { rerender } = render(EditField, {
      label: "Name",
      value: "a",
      onedit,
    });
    const field = screen.getByLabelText<HTMLInputElement>("Name");
    await userEvent.clear(field);
    expect(screen.getByRole("status").textContent).toBe("Write something.");
    expect(field.getAttribute("aria-invalid")).toBe("true");
    // Undone elsewhere: the value is the deck's again.
    await rerender({ value: "b" });
    expect(field.value).toBe("b");
    expect(screen.getByRole("status").textContent).toBe("");
  });

  it("keeps a space at the end until it is left, though the value does without", async () => {
    const { rerender } = render(EditField, {
      label: "Name",
      value: "",
      onedit: (text: string) => {
        void rerender({ value: text.trim() });
        return undefined;
      },
    });
    const field = screen.getByLabelText<HTMLInputElement>("Name");
    await userEvent.type(field, "My d{Backspace}cat ");
    expect(field.value).toBe("My cat ");
    await userEvent.tab();
    expect(field.value).toBe("My cat");
  });

  it("hides what follows from a value while another one is refused", async () => {
    render(EditField, {
      label: "Target",
      value: "8",
      kind: "number",
      unit: "seconds",
      follows: ", 12 when it is written",
      onedit: () => "Between half a second and 600 seconds.",
    });
    expect(document.body.textContent).toContain("seconds, 12 when");
    await userEvent.type(screen.getByLabelText("Target"), "00000{Tab}");
    expect(document.body.textContent).not.toContain("12 when");
    expect(screen.getByRole("status").textContent).toMatch(/^Between half/);
  });

  it("keeps a long line one line", async () => {
    const onedit = vi.fn(() => undefined);
    render(EditField, { label: "About", value: "", kind: "long-line", onedit });
    await userEvent.type(screen.getByLabelText("About"), "a{Enter}b");
    expect(onedit.mock.lastCall).toEqual(["a b"]);
  });
});
