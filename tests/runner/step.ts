/**
 * One step of the test run: a command whose output is kept back and shown only
 * where it fails, so that two steps at once do not mix their lines.
 */
import { spawn } from "node:child_process";

/** A command of the run. */
export interface Step {
  readonly name: string;
  /** Commands run one after another, through the shell. */
  readonly commands: readonly string[];
  readonly environment?: Readonly<Record<string, string>>;
}

/** Runs a step, prints a line about it, and says whether it succeeded. */
export async function runStep(step: Step): Promise<boolean> {
  const began = performance.now();
  for (const command of step.commands) {
    const { code, output } = await run(command, step.environment ?? {});
    if (code !== 0) {
      console.log(`✗ ${step.name} (${command})\n${output}`);
      return false;
    }
  }
  const seconds = ((performance.now() - began) / 1000).toFixed(1);
  console.log(`✓ ${step.name}  ${seconds} s`);
  return true;
}

function run(
  command: string,
  environment: Readonly<Record<string, string>>,
): Promise<{ code: number | null; output: string }> {
  return new Promise((resolve, reject) => {
    const child = spawn(command, {
      shell: true,
      env: { ...process.env, FORCE_COLOR: "0", ...environment },
      stdio: ["ignore", "pipe", "pipe"],
    });
    let output = "";
    for (const stream of [child.stdout, child.stderr]) {
      stream.setEncoding("utf8").on("data", (chunk: string) => {
        output += chunk;
      });
    }
    child.once("error", reject);
    child.once("close", (code) => resolve({ code, output }));
  });
}
