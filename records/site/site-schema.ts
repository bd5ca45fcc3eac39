/**
 * The site file, `fallwright: site@1`: one place, its water, its pipes and its ram.
 *
 * This one schema describes the file, the form on a page and the body of a request. `schema/site.schema.json` is made
 * from it.
 */
import * as z from 'zod/mini';
import { formatField } from '../format-field.ts';
import { demandField, tankField } from './demand-fields.ts';
import { choice, fields, oneOrMore, quantity, words } from './fields.ts';
import { heightField } from './height-fields.ts';
import { pipeLengthFields } from './pipe-fields.ts';
import { ramField } from './ram-fields.ts';
import { sourceFields } from './source-fields.ts';

export const SITE_FORMAT = 'site@1';

export const siteSchema = fields(
  {
    fallwright: formatField(SITE_FORMAT),
    name: z.exactOptional(words({ called: 'the name', is: 'how people call this place' })),
    owner: z.exactOptional(words({ called: 'the owner', is: 'whose place it is' })),
    place: z.exactOptional(words({ called: 'the place', is: 'where it lies' })),
    notes: z.exactOptional(words({ called: 'the notes', is: 'anything worth keeping' })),
    units: z.exactOptional(
      choice(['metric', 'us'], {
        called: 'the units',
        is: 'the units of the answer; those the file is mostly written in when left out',
      }),
    ),
    source: sourceFields,
    fall: heightField({
      called: 'the fall',
      is: 'the height of the source’s surface above the waste valve’s outlet, which drives the ram',
    }),
    drive: oneOrMore(pipeLengthFields, {
      called: 'the drive line',
      is: 'the pipes from the source to the ram, in the order of the water, such as [ { pipe: PE100 SDR11 25, length: 14 m } ]',
    }),
    ram: z.exactOptional(ramField),
    lift: heightField({
      called: 'the lift',
      is: 'the height of the outlet at the tank above the waste valve’s outlet',
    }),
    delivery: z.exactOptional(
      oneOrMore(pipeLengthFields, {
        called: 'the delivery line',
        is: 'the pipes from the ram to the tank, in the order of the water, such as { pipe: PE100 SDR11 20, length: 160 m }',
      }),
    ),
    demand: z.exactOptional(demandField),
    tank: z.exactOptional(tankField),
    temperature: z.exactOptional(
      quantity('temperature', { called: 'the temperature', is: 'the temperature of the water' }),
    ),
    altitude: z.exactOptional(
      quantity('altitude', { called: 'the altitude', is: 'the height of the place above the sea' }),
    ),
  },
  { called: 'the site', is: 'fields such as fall: 1.9 m' },
);

export type Site = z.output<typeof siteSchema>;
