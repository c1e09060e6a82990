import type { RunnerTask } from 'vitest';
import type { Reporter, TestModule, Vitest } from 'vitest/node';

/** Prints each group's medians, each as a multiple of the group's first, the baseline, and the longest of each. */
export default class RatioReporter implements Reporter {
  private vitest: Vitest | undefined;

  onInit(vitest: Vitest): void {
    this.vitest = vitest;
  }

  onTestModuleEnd({ moduleId }: TestModule): void {
    for (const file of this.vitest?.state.getFiles([moduleId]) ?? []) {
      for (const group of file.tasks) {
        if (group.type === 'suite') printGroup(group.name, group.tasks);
      }
    }
  }
}

function printGroup(title: string, tasks: readonly RunnerTask[]): void {
  console.log(`\n${title}`);
  const medians = tasks.map(({ result }) => result?.benchmark?.median ?? Number.NaN);
  tasks.forEach(({ name, result }, i) => {
    const times = (medians[i] / medians[0]).toFixed(2);
    const longest = ((result?.benchmark?.max ?? Number.NaN) / medians[i]).toFixed(0);
    console.log(
      `${medians[i].toFixed(4).padStart(12)} ms ${times.padStart(8)} × ${longest.padStart(6)} × longest  ${name}`,
    );
  });
}
