/** Runs a task once what has just been drawn is on the screen: measuring it then costs no second layout. */
export function afterPaint(task: () => void): void {
  requestAnimationFrame(() => void setTimeout(task));
}
