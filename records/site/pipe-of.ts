/** The pipe that a length of line names or spells out, with what its table or its material adds. */
import { findPipe, MATERIALS, type MaterialName, PIPES, type Pipe } from '@fallwright/engine';
import { quoted } from '@fallwright/units';
import type { Assumptions } from './assumption.ts';
import { materialCalled } from './materials.ts';
import type { PipeLength } from './pipe-fields.ts';

export function pipeOf(length: PipeLength, field: string, assumptions: Assumptions): Pipe {
  return typeof length.pipe === 'string'
    ? tablePipe(length, length.pipe, field, assumptions)
    : pipeSpelledOut(length.pipe ?? length, field, assumptions);
}

function tablePipe(
  length: PipeLength,
  name: string,
  field: string,
  assumptions: Assumptions,
): Pipe {
  const found = findPipe(name);
  if (!found.ok)
    throw new RangeError(`no pipe is called ${quoted(name)}: read the site with readSite first`);
  const from = { why: found.pipe.standard, basis: 'table' } as const;
  assumptions.quantity(`${field}.bore`, `bore of ${name}`, found.pipe.innerDiameter, 'bore', from);
  assumptions.quantity(`${field}.wall`, `wall of ${name}`, found.pipe.wallThickness, 'bore', from);
  const rating = length.rating?.value ?? found.pipe.rating;
  const { name: tableName, material, innerDiameter, wallThickness, roughness } = found.pipe;
  return {
    name: tableName,
    material,
    innerDiameter,
    wallThickness,
    roughness,
    ...(rating !== undefined && { rating }),
  };
}

type SpelledOut = Exclude<PipeLength['pipe'], string | undefined>;

function pipeSpelledOut(spelled: SpelledOut, field: string, assumptions: Assumptions): Pipe {
  const material = spelled.material === undefined ? undefined : materialCalled(spelled.material);
  if (!material || !spelled.bore) {
    throw new RangeError(`${field} has no material or no bore: read the site with readSite first`);
  }
  const innerDiameter = spelled.bore.value;
  return {
    name: `${spelled.material} ${spelled.bore.text}`,
    material,
    innerDiameter,
    wallThickness: spelled.wall?.value ?? assumedWall(material, innerDiameter, field, assumptions),
    roughness: spelled.roughness?.value ?? assumedRoughness(material, field, assumptions),
    ...(spelled.rating && { rating: spelled.rating.value }),
  };
}

function assumedRoughness(material: MaterialName, field: string, assumptions: Assumptions): number {
  const { displayName, roughness } = MATERIALS[material];
  return assumptions.quantity(
    `${field}.roughness`,
    `roughness of ${displayName}`,
    roughness.value,
    'bore',
    {
      why: `new pipe; ${roughness.source}`,
      basis: 'table',
    },
  );
}

/** The wall of the table pipe of this material whose bore is nearest, scaled to this bore. */
function assumedWall(
  material: MaterialName,
  bore: number,
  field: string,
  assumptions: Assumptions,
): number {
  const sameMaterial = PIPES.filter((pipe) => pipe.material === material);
  const gap = (pipe: Pipe): number => Math.abs(Math.log(pipe.innerDiameter / bore));
  const nearest = sameMaterial.sort((a, b) => gap(a) - gap(b))[0];
  const what = `wall of the ${MATERIALS[material].displayName}`;
  if (!nearest) {
    // Judgement: a tenth of the bore, as common rigid pipe has; only materials with no table come here.
    return assumptions.quantity(`${field}.wall`, what, bore / 10, 'bore', {
      why: 'a tenth of the bore',
      basis: 'judgement',
    });
  }
  const wall = nearest.wallThickness * (bore / nearest.innerDiameter);
  return assumptions.quantity(`${field}.wall`, what, wall, 'bore', {
    why: `in proportion to ${nearest.name}`,
    basis: 'table',
  });
}
