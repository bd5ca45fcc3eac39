import type { Theme } from '../state/settings.ts';

/** Paper and night are named on the root element; with neither the system decides. */
export function showTheme(theme: Theme): void {
  const night = window.matchMedia('(prefers-color-scheme: dark)');
  const shown = theme === 'system' ? (night.matches ? 'night' : 'paper') : theme;
  document.documentElement.dataset.theme = shown;
  // The frame that the system draws around an installed app is of the same paper.
  const paper = getComputedStyle(document.documentElement).getPropertyValue('--paper').trim();
  for (const frame of document.querySelectorAll('meta[name="theme-color"]')) {
    if (paper !== '') frame.setAttribute('content', paper);
  }
  night.onchange = theme === 'system' ? () => showTheme('system') : null;
}
