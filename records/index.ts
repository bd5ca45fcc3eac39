/** Records as they are saved: their shape, reading with every problem named, and writing. */
export { type Given, isGiven, ORIGINS, type Origin } from './given.ts';
export type { Problem, ProblemKind } from './problem.ts';
export type { Assumption, Basis } from './site/assumption.ts';
export type { DemandForm, TankForm } from './site/demand-fields.ts';
export { givensOf, systemOf } from './site/givens.ts';
export { type AssembledSite, installationOf } from './site/installation-of.ts';
export { siteJsonSchema } from './site/json-schema.ts';
export { MATERIAL_WORDS, materialCalled } from './site/materials.ts';
export { readSite, type SiteRead, siteFromData } from './site/read-site.ts';
export { MONTH_NAMES, seasonOf } from './site/season.ts';
export { SITE_FORMAT, type Site, siteSchema } from './site/site-schema.ts';
export { writeSite } from './site/write-site.ts';
export { LONGEST_TEXT } from './yaml-text.ts';
