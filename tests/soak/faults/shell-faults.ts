import type { PlantedFault } from "../planted-fault";

/** Faults in the app around the page: its server, files, menu and log. */
export const SHELL_FAULTS: readonly PlantedFault[] = [
  {
    name: "the local server answers to any host name",
    file: "electron/local-server.ts",
    find: "request.headers.host === host",
    replace: "request.headers.host !== undefined",
    tests: ["tests/electron/local-server.test.ts"],
  },
  {
    name: "answers other than pages go without the content policy",
    file: "electron/served-files.ts",
    find: `      ...PROTECTING_HEADERS,
      "Content-Type": "text/plain; charset=utf-8",`,
    replace: `      "Content-Type": "text/plain; charset=utf-8",`,
    tests: [
      "tests/electron/served-files.test.ts",
      "tests/electron/local-server.test.ts",
    ],
  },
  {
    name: "a crash while a deck is saved leaves half a file in its place",
    file: "electron/whole-files.ts",
    find: "const unfinished = join(folder, `.turnwise-${randomUUID()}.part`);",
    replace: "const unfinished = path;",
    tests: ["tests/electron/whole-files.test.ts"],
  },
  {
    name: "the page may read any file by calling it a backup",
    file: "electron/backup-folder.ts",
    find: "if (!stored.some((backup) => backup.name === name))",
    replace: `if (name === "" && stored.length === 0)`,
    tests: ["tests/electron/backup-folder.test.ts"],
  },
  {
    name: "old automatic backups go although the new one was not written",
    file: "electron/backup-folder.ts",
    find: "if (!written.ok) return written;",
    replace: "",
    tests: ["tests/electron/backup-folder.test.ts"],
  },
  {
    name: "a menu takes the key that turns the right layer",
    file: "electron/menu-template.ts",
    find: `accelerator: "CmdOrCtrl+R"`,
    replace: `accelerator: "R"`,
    tests: ["tests/electron/menu-template.test.ts"],
  },
  {
    name: "the log of an error names the person's folder",
    file: "electron/trouble-log.ts",
    find: "const text = withoutPersonal(trouble.text, facts.personal);",
    replace: "const text = trouble.text;",
    tests: ["tests/electron/trouble-log.test.ts"],
  },
];
