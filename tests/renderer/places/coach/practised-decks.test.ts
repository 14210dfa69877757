import { render, screen } from "@testing-library/svelte";
import userEvent from "@testing-library/user-event";
import { describe, expect, it, vi } from "vitest";
import { STARTER_DECKS } from "../../../../core/deck/starter-decks";
import PractisedDecks from "../../../../renderer/places/coach/PractisedDecks.svelte";

const IDS = STARTER_DECKS.map(({ id }) => id);
const [EDGES = "", CORNERS = "", REST = ""] = IDS;

function show(practised: readonly string[]) {
  const onchange = vi.fn();
  render(PractisedDecks, {
    name: "Ann",
    decks: STARTER_DECKS,
    practised,
    onchange,
  });
  return onchange;
}

describe("what a learner practises", () => {
  it("shows the chosen decks in their order, then the others", () => {
    show([CORNERS, EDGES]);
    const ticks = screen.getAllByRole<HTMLInputElement>("checkbox");
    expect(ticks.map(({ checked }) => checked)).toEqual(
      IDS.map((_, i) => i < 2),
    );
    expect(
      screen.getByRole("heading", { name: "What Ann practises" }),
    ).toBeTruthy();
  });

  it("is added before the others, taken out, and moved earlier", async () => {
    const onchange = show([CORNERS, EDGES]);
    await userEvent.click(screen.getByRole("checkbox", { name: /The rest/ }));
    expect(onchange).toHaveBeenLastCalledWith([REST, CORNERS, EDGES]);
    await userEvent.click(screen.getByRole("checkbox", { name: /corners/ }));
    expect(onchange).toHaveBeenLastCalledWith([EDGES]);
    await userEvent.click(
      screen.getByRole("button", { name: "Put First-layer edges earlier" }),
    );
    expect(onchange).toHaveBeenLastCalledWith([EDGES, CORNERS]);
  });

  it("says what to do when there is nothing left to practise", () => {
    show([]);
    expect(screen.getByRole("status").textContent).toContain(
      "Choose at least one deck",
    );
  });
});
