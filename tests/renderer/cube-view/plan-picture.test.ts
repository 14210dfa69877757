import { render, screen } from "@testing-library/svelte";
import { describe, expect, it } from "vitest";
import { FACES, type Face } from "../../../core/cube/faces";
import { USUAL_SCHEME } from "../../../core/picture/colour-sets";
import { cubePalette } from "../../../core/picture/palette";
import PlanPicture from "../../../renderer/cube-view/PlanPicture.svelte";

const PLAN = {
  stickers: FACES.flatMap((face) => new Array<Face>(9).fill(face)),
  palette: cubePalette({ scheme: USUAL_SCHEME, theme: "light" }),
};

describe("a plan on the screen", () => {
  it("is a picture with a text, as large as is said", () => {
    render(PlanPicture, { plan: PLAN, size: 96, label: "The top is white" });
    const svg = screen.getByRole("img", { name: "The top is white" });
    expect(svg.getAttribute("width")).toBe("96");
    expect(svg.getAttribute("height")).toBe("96");
    expect(svg.getAttribute("viewBox")).toBe("-48 -48 96 96");
    // What is painted is of the vector kind, or nothing would be seen.
    const paths = [...svg.querySelectorAll("path")];
    expect(paths.length).toBeGreaterThan(20);
    for (const path of paths)
      expect(path.namespaceURI).toBe("http://www.w3.org/2000/svg");
  });

  it("keeps out of the way of a screen reader where the text is beside it", () => {
    render(PlanPicture, { plan: PLAN, size: 96, label: "" });
    expect(screen.queryByRole("img")).toBeNull();
  });

  it("carries no inline style, which the content policy forbids", () => {
    const { container } = render(PlanPicture, {
      plan: { ...PLAN, arrows: [{ from: 6, to: 2 }], rings: [4] },
      size: 96,
      label: "",
    });
    expect(container.querySelectorAll("[style]")).toHaveLength(0);
    expect(container.querySelectorAll("path").length).toBeGreaterThan(26);
  });
});
