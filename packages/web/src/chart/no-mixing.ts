// Stands in for the colour library that Chart.js brings: it mixes colours for animations and for hovering, and this
// chart has neither. Colours go to the canvas as the page's style gives them.

/** As much of a colour as is ever asked for. */
export class Color {
  readonly valid = false;
}
