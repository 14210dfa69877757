import {
  getConfig,
  validateConfiguration,
} from "app-builder-lib/out/util/config/config.js";
import { DebugLogger } from "builder-util";
import type { Configuration } from "electron-builder";
import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";

const ROOT = join(import.meta.dirname, "../../..");
const CONFIG = "electron/packing/electron-builder.config.ts";

/** Read by electron-builder itself, as `npm run pack` has it read. */
const config = await getConfig(ROOT, CONFIG, null);

function validated(changed: object): Promise<void> {
  return validateConfiguration(
    { ...config, ...changed },
    new DebugLogger(false),
  );
}

describe("the packer's configuration", () => {
  it("is accepted by electron-builder's own validator", async () => {
    await expect(validated({})).resolves.toBeUndefined();
  });

  it.each([
    ["unknown property 'productNmae'", { productNmae: "Turnwise" }],
    ["configuration.linux", { linux: { ...config.linux, categroy: "A" } }],
    ["configuration.electronFuses", { electronFuses: { runAsNod: false } }],
    ["configuration.asar", { asar: "yes" }],
  ])("would be refused with %j for %j", async (complaint, slip) => {
    await expect(validated(slip)).rejects.toThrow(complaint);
  });

  it("is the one that npm run pack names", () => {
    const text = readFileSync(join(ROOT, "package.json"), "utf8");
    expect(text).toContain(`electron-builder --config ${CONFIG}`);
  });

  it("packs for three systems and publishes nothing", () => {
    expect({
      linux: config.linux?.target,
      windows: config.win?.target,
      mac: config.mac?.target,
    }).toEqual({ linux: ["AppImage", "deb"], windows: "nsis", mac: "dmg" });
    expect(config.publish).toBeNull();
    expect(config.asar).toBe(true);
  });

  // Source: Electron's documentation, tutorial "Electron Fuses", from memory:
  // what it calls an app's best setting where nothing needs the feature.
  it("sets the fuses as Electron's documentation recommends", () => {
    expect(config.electronFuses).toMatchObject({
      runAsNode: false,
      enableCookieEncryption: true,
      enableNodeOptionsEnvironmentVariable: false,
      enableNodeCliInspectArguments: false,
      enableEmbeddedAsarIntegrityValidation: true,
      onlyLoadAppFromAsar: true,
      grantFileProtocolExtraPrivileges: false,
    } satisfies Configuration["electronFuses"]);
  });

  it("gives deck files to the app on every system", () => {
    expect(config.fileAssociations).toMatchObject([
      {
        ext: "turnwise-deck",
        mimeType: "application/vnd.turnwise.deck+json",
      },
    ]);
  });

  it("names icons that are there, in the form each system reads", () => {
    const icons = [config.linux?.icon, config.win?.icon, config.mac?.icon];
    expect(icons).toEqual(["icons", "icon.ico", "icon.icns"]);
    for (const icon of icons) {
      const path = join(ROOT, "electron/packing", String(icon));
      expect(existsSync(path), path).toBe(true);
    }
  });
});
