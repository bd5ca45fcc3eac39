/** The flow that the measurements of a source give, each by its own method, and all together. */
import {
  bucketFlow,
  type CombinedFlow,
  combinedFlow,
  dropFlow,
  floatFlow,
  type Gauged,
  rectangularWeirFlow,
  type Supply,
  supplyFrom,
  vNotchFlow,
} from '@fallwright/engine';
import { formatQuantity, unitSystemOf } from '@fallwright/units';
import type { Given } from '../given.ts';
import type { GaugingForm, GaugingMethod } from './gauging-fields.ts';
import { givensOf } from './givens.ts';
import type { SourceForm } from './source-fields.ts';

type Field = keyof GaugingForm;

/** What a method needs and what it may have besides; a choice of fields stands in one list. */
export const METHOD_FIELDS: Readonly<
  Record<GaugingMethod, { readonly needs: readonly Field[]; readonly may: readonly Field[] }>
> = {
  bucket: { needs: ['volume', 'times'], may: [] },
  'v-notch': { needs: ['angle', 'head'], may: ['crestHeight', 'channelWidth', 'freeDrop'] },
  'rectangular weir': {
    needs: ['width', 'head', 'crestHeight', 'channelWidth'],
    may: ['freeDrop'],
  },
  float: { needs: ['length', 'times'], may: ['area', 'width', 'depths', 'coefficient'] },
  drop: { needs: ['area', 'drop', 'times'], may: [] },
};

/** The flow by one measurement; undefined while it lacks a field or holds a nought. */
export function gaugedBy(form: GaugingForm): Gauged | undefined {
  const times = form.times ?? (form.time && [form.time]);
  const { volume, angle, head, crestHeight, channelWidth, freeDrop, width, area } = form;
  const measures = [volume, angle, crestHeight, channelWidth, width, area, form.drop, form.length];
  const lists = [times, head, form.depths].flatMap((list) => list ?? []);
  if ([...measures, ...lists].some((given) => given !== undefined && !(given.value > 0))) {
    return undefined;
  }
  if (form.coefficient === 0) return undefined;
  const weirDrop = freeDrop && { freeDrop: freeDrop.value };
  switch (form.method) {
    case 'bucket':
      return volume && times && bucketFlow({ volume, times });
    case 'v-notch':
      if (!angle || !head || angle.value >= Math.PI) return undefined;
      return vNotchFlow({
        angle,
        heads: head,
        ...(crestHeight && { crestHeight: crestHeight.value }),
        ...(channelWidth && { channelWidth: channelWidth.value }),
        ...weirDrop,
      });
    case 'rectangular weir':
      if (!width || !head || !crestHeight || !channelWidth) return undefined;
      if (width.value > channelWidth.value) return undefined;
      return rectangularWeirFlow({
        width,
        heads: head,
        crestHeight: crestHeight.value,
        channelWidth: channelWidth.value,
        ...weirDrop,
      });
    case 'float': {
      const { length, depths, coefficient } = form;
      const section = area ? { area } : width && depths && { width, depths };
      if (!length || !times || !section) return undefined;
      return floatFlow({
        length,
        times,
        section,
        ...(coefficient !== undefined && { coefficient: { value: coefficient } }),
      });
    }
    case 'drop':
      return area && form.drop && times && dropFlow({ area, drop: form.drop, times });
  }
}

/** One measurement with its flow. */
export interface Gauging {
  /** Its place in the file's list. */
  readonly index: number;
  readonly form: GaugingForm;
  readonly gauged: Gauged;
}

export interface GaugedSource {
  readonly gaugings: readonly Gauging[];
  readonly combined: CombinedFlow;
}

/** All measurements of a source that can be worked out; undefined when there are none. */
export function gaugedSource(source: SourceForm): GaugedSource | undefined {
  const gaugings = (source.gauging ?? []).flatMap((form, index): Gauging[] => {
    const gauged = gaugedBy(form);
    return gauged ? [{ index, form, gauged }] : [];
  });
  if (gaugings.length === 0) return undefined;
  return {
    gaugings,
    combined: combinedFlow(
      gaugings.map(({ gauged: { flow, spread } }) => ({
        flow,
        // Readings whose ± were all written as nought are still no better than their digits.
        spread: Math.max(spread, SUREST * flow),
      })),
    ),
  };
}

/** Judgement: no flow at a spring is known better than to a thousandth. */
const SUREST = 1e-3;

/**
 * What the source yields (what runs in, for a store) as a quantity with its spread: as written, or else as gauged. Undefined
 * when nothing says, or when there is plenty.
 */
export function sourceFlowOf(source: SourceForm): Given | undefined {
  const written = source.store === undefined ? source.flow : source.inflow;
  if (written === 'plenty') return undefined;
  if (written !== undefined) return written;
  const combined = gaugedSource(source)?.combined;
  if (!combined) return undefined;
  const { flow: value, spread } = combined;
  const system = unitSystemOf(givensOf(source.gauging).map(({ given }) => given.text));
  const text = formatQuantity(value, 'sourceFlow', system, { figures: 4, spread });
  return { value, spread, origin: 'measured', text };
}

/** What of the source the ram may be fed with, and which figure limits it. */
export function supplyOf(source: SourceForm): Supply {
  return supplyFrom({
    flow: sourceFlowOf(source)?.value,
    drySeason: source.drySeason?.value,
    share: source.share?.value,
  });
}

/** Whether a float was worked out with the coefficient that is usual, because none was given. */
export function hasUsualCoefficient({ method, coefficient }: GaugingForm): boolean {
  return method === 'float' && coefficient === undefined;
}
