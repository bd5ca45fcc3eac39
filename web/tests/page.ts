/** The page as a person meets it: boxes by their names, the answer by its place, complaints of the browser gathered. */
import AxeBuilder from '@axe-core/playwright';
import { expect, type Locator, type Page } from '@playwright/test';

export class FirstPage {
  readonly page: Page;
  readonly answer: Locator;
  /** Errors in the console and uncaught ones: a page that works has none. */
  readonly complaints: string[] = [];

  constructor(page: Page) {
    this.page = page;
    this.answer = page.getByRole('region', { name: 'Answer', exact: true });
    page.on('pageerror', (error) => this.complaints.push(error.message));
    page.on('console', (message) => {
      if (message.type() === 'error') this.complaints.push(message.text());
    });
  }

  /** Opens the first place of the demo workshop, loaded for it. */
  async open(): Promise<void> {
    await this.page.goto('/');
    await this.page.getByRole('button', { name: 'Load the demo workshop' }).click();
    await this.page.getByRole('link', { name: 'Larkrise spring' }).click();
    await expect(this.answer.getByRole('heading')).toBeVisible();
  }

  /** A box by the name that stands over it, in one part of the thread where a name stands in two. */
  box(name: string, part?: string): Locator {
    const within = part === undefined ? this.page : this.part(part);
    // A datalist makes the box of a pipe a combobox to those who listen.
    return within
      .getByRole('textbox', { name: boxName(name) })
      .or(within.getByRole('combobox', { name: boxName(name) }));
  }

  part(name: string): Locator {
    return this.page.getByRole('region', { name, exact: true });
  }

  /** What a person hears when the answer has settled. */
  spoken(): Locator {
    return this.page.getByRole('status').filter({ hasText: /\S/ });
  }

  /** Waits until the newest input is answered and the search for changes is over. */
  async settled(): Promise<void> {
    const changes = this.page.getByRole('region', { name: 'What would change it' });
    await expect(changes.getByRole('table')).toBeVisible({ timeout: 15_000 });
    await expect(this.answer.getByText('running again')).toHaveCount(0);
  }

  async beginEmpty(): Promise<void> {
    await this.page.getByRole('button', { name: 'Begin an empty place' }).click();
    await expect(this.answer.getByRole('heading', { name: 'Not enough yet' })).toBeVisible();
  }

  /** Every rule as the page stands; by night only what the theme can change, its contrasts. */
  async expectNoAxeViolations({ byNight = true } = {}): Promise<void> {
    // A page behind another one does not finish changing its colours.
    await this.page.bringToFront();
    await expectNoViolations(
      new AxeBuilder({ page: this.page }).withTags([
        'wcag2a',
        'wcag2aa',
        'wcag21a',
        'wcag21aa',
        'wcag22aa',
        'best-practice',
      ]),
    );
    if (!byNight) return;
    await this.page.emulateMedia({ colorScheme: 'dark' });
    // Colours change at a touch but may settle; a contrast taken half way would be neither.
    await this.page.waitForTimeout(300);
    await expectNoViolations(
      new AxeBuilder({ page: this.page }).withRules(['color-contrast', 'link-in-text-block']),
    );
    await this.page.emulateMedia({ colorScheme: 'light' });
  }
}

async function expectNoViolations(axe: AxeBuilder): Promise<void> {
  const { violations } = await axe.analyze();
  const told = violations.map(({ id, nodes }) => `${id}: ${nodes.map((n) => n.html).join(' | ')}`);
  expect(told).toEqual([]);
}

/** The name, with or without the words for a box that may stay empty. */
function boxName(name: string): RegExp {
  return new RegExp(`^${name}( if known)?$`);
}
