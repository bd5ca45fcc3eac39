/** The stretch of time that the traces show: zoomed, moved, and always inside the film. */

export interface TimeWindow {
  readonly from: number;
  readonly to: number;
}

export interface WindowLimits {
  readonly duration: number;
  /** Narrower than this a window shows nothing more. */
  readonly least: number;
}

/** The window kept inside the film and no narrower than its least width. */
export function fitted({ from, to }: TimeWindow, { duration, least }: WindowLimits): TimeWindow {
  const width = Math.min(duration, Math.max(Math.min(least, duration), to - from));
  const middle = (from + to) / 2;
  const start = Math.min(Math.max(0, middle - width / 2), duration - width);
  return { from: start, to: start + width };
}

/** The window made `factor` times narrower, with the moment `about` staying where it is on the page. */
export function zoomed(
  { from, to }: TimeWindow,
  factor: number,
  about: number,
  limits: WindowLimits,
): TimeWindow {
  const wanted = (to - from) / factor;
  const width = Math.min(
    limits.duration,
    Math.max(Math.min(limits.least, limits.duration), wanted),
  );
  const share = (about - from) / (to - from);
  const start = about - share * width;
  return fitted({ from: start, to: start + width }, limits);
}

/** The window moved just enough that a moment outside it comes to stand a tenth inside. */
export function following(window: TimeWindow, time: number, limits: WindowLimits): TimeWindow {
  if (time >= window.from && time <= window.to) return window;
  const width = window.to - window.from;
  const start = time < window.from ? time - 0.1 * width : time - 0.9 * width;
  return fitted({ from: start, to: start + width }, limits);
}
