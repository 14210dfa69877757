/**
 * How the app is packed for the three systems (`npm run pack`).
 *
 * Given to electron-builder by name, so that it lies beside the icons and not
 * at the checkout's top. Nothing is published and nothing looks for updates:
 * they are left to the system or to the person who installs.
 */
import type { Configuration } from "electron-builder";

const AUTHORS = "The Turnwise authors";

const config: Configuration = {
  // Windows and macOS know an installed app by this: never change it.
  appId: "app.turnwise.desktop",
  productName: "Turnwise",
  copyright: `Copyright © 2026 ${AUTHORS}`,
  artifactName: "turnwise-${version}-${os}-${arch}.${ext}",
  extraMetadata: {
    // Every Debian package must name both. Placeholders, in a domain that is
    // promised to no one (RFC 2606), until there is a public address.
    homepage: "https://turnwise.invalid/",
    author: { name: AUTHORS, email: "authors@turnwise.invalid" },
    // A Linux desktop finds the window's icon and name by this.
    desktopName: "turnwise.desktop",
  },
  publish: null,

  directories: { output: "dist/packages", buildResources: "electron/packing" },
  // All libraries are bundled: the app is what the build leaves, and no more.
  files: [
    "dist/electron/main.js",
    "dist/electron/preload.cjs",
    "dist/renderer/**",
    "!**/*.map",
    "!**/node_modules/**",
  ],
  asar: true,
  npmRebuild: false,

  // Electron's fuses, set as its documentation recommends (tutorial "Electron
  // Fuses"); the browser process's own V8 snapshot is left off, as we have none.
  electronFuses: {
    runAsNode: false,
    enableCookieEncryption: true,
    enableNodeOptionsEnvironmentVariable: false,
    enableNodeCliInspectArguments: false,
    enableEmbeddedAsarIntegrityValidation: true,
    onlyLoadAppFromAsar: true,
    loadBrowserProcessSpecificV8Snapshot: false,
    grantFileProtocolExtraPrivileges: false,
    // Setting fuses breaks the signature without which Apple's own processors
    // run nothing; needed where nobody signs with a certificate.
    resetAdHocDarwinSignature: true,
  },

  fileAssociations: [
    {
      ext: "turnwise-deck",
      name: "Turnwise deck",
      description: "Turnwise deck",
      mimeType: "application/vnd.turnwise.deck+json",
      role: "Editor",
    },
  ],

  linux: {
    target: ["AppImage", "deb"],
    icon: "icons",
    executableName: "turnwise",
    syncDesktopName: true,
    category: "Education",
    synopsis: "Learn to solve the cube layer by layer",
  },
  win: { target: "nsis", icon: "icon.ico" },
  // For one person, without an administrator: the deck files' association is
  // written for that person too.
  nsis: { oneClick: true, perMachine: false, differentialPackage: false },
  mac: {
    target: "dmg",
    icon: "icon.icns",
    category: "public.app-category.education",
  },
  dmg: { writeUpdateInfo: false },
};

export default config;
