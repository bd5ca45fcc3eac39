/** How a height is measured, one small drawing for each way. Shapes only: nothing here is to scale. */
import { RamSign } from '../../drawing/symbols.tsx';
import type { HeightName } from '../../state/measured-entry.ts';
import { Leaf, Measure, Says, StaffRod, Ticks, Water } from './parts.tsx';

interface Names {
  readonly upper: string;
  readonly lower: string;
}

const NAMES: Readonly<Record<HeightName, Names>> = {
  fall: { upper: 'at the water', lower: 'at the ram' },
  lift: { upper: 'at the tank', lower: 'at the ram' },
};

/** Where the height begins: the water of the source, or the tank. */
function UpperEnd({ height }: { readonly height: HeightName }) {
  return height === 'fall' ? (
    <Water d="M0 106H50L44 122H0z" surface="M0 106H50" />
  ) : (
    <>
      <Water d="M4 92H44V106H4z" surface="M4 92H44" />
      <path className="d-ink" d="M4 82V106H44V82" style={{ strokeWidth: 2 }} />
    </>
  );
}

const HILL = (
  <>
    <Ticks
      at={[
        [24, 123],
        [86, 112],
        [122, 126],
        [152, 148],
        [182, 171],
        [218, 187],
        [252, 202],
        [290, 207],
      ]}
    />
    <path className="d-ground" d="M0 122H44L58 104L92 112C140 122 170 168 214 184L262 205H328" />
  </>
);

function Levels({ height }: { readonly height: HeightName }) {
  const { upper, lower } = NAMES[height];
  return (
    <Leaf
      height={222}
      says={`A level on its legs between two staffs, one ${upper} and one ${lower}. Both are read along one level line of sight; the difference of the two readings is the height.`}
    >
      <UpperEnd height={height} />
      {HILL}
      <path className="d-edge is-sight" d="M18 74H306" />
      <path className="d-ink" d="M150 82L134 129M150 82L164 151M150 82V143" />
      <rect className="d-metal" x="132" y="69" width="36" height="10" rx="2" />
      <StaffRod x={26} foot={height === 'fall' ? 106 : 106} tall={86} />
      <StaffRod x={292} foot={205} tall={164} />
      <Says x={42} y={69} tone="strong">
        back 0.412
      </Says>
      <Says x={286} y={69} lean="end" tone="strong">
        fore 2.300
      </Says>
      <path className="d-waterline is-broken" d="M52 106H318" />
      <Measure from={[314, 106]} to={[314, 205]} />
      <Says x={286} y={150} lean="end" tone="water-value">
        {height}
      </Says>
      <Says x={4} y={14} tone="of-water">
        {upper}
      </Says>
      <Says x={324} y={32} lean="end" tone="second">
        {lower}
      </Says>
    </Leaf>
  );
}

function Hops({ height }: { readonly height: HeightName }) {
  const { upper, lower } = NAMES[height];
  return (
    <Leaf
      height={196}
      says={`Three hops from ${lower} up to ${upper}: a clear hose with water, held against a staff at each step. The rises are added up.`}
    >
      <Ticks
        at={[
          [30, 177],
          [84, 171],
          [132, 133],
          [176, 113],
          [226, 83],
          [276, 61],
        ]}
      />
      <path className="d-ground" d="M0 176H64L112 150L124 130L190 112L216 84L262 58H328" />
      <RamSign at={{ x: 24, y: 170 }} size={1.5} />
      <StaffRod x={64} foot={174} tall={60} />
      <StaffRod x={146} foot={124} tall={58} />
      <StaffRod x={224} foot={78} tall={56} />
      <path
        className="d-surface"
        d="M73 124C90 152 130 152 146 124M155 78C170 106 210 106 224 78M233 58C240 70 256 70 264 58"
      />
      <path className="d-edge is-broken" d="M64 124H160M146 78H238M224 58H270" />
      <Measure from={[54, 124]} to={[54, 174]} />
      <Says x={58} y={116} lean="end" tone="strong">
        hop 1
      </Says>
      <Measure from={[138, 78]} to={[138, 124]} letter="hop 2" lean="end" />
      <Measure from={[216, 58]} to={[216, 78]} letter="hop 3" lean="end" />
      <Says x={320} y={48} lean="end" tone="of-water">
        {upper}
      </Says>
      <Says x={4} y={146} tone="of-metal">
        ram
      </Says>
    </Leaf>
  );
}

function Gauge({ height }: { readonly height: HeightName }) {
  const { upper } = NAMES[height];
  return (
    <Leaf
      height={214}
      says={`A full pipe leads down from ${upper} to a pressure gauge. With the water still, the gauge reads the height of the water above it.`}
    >
      <Water d="M4 26H66V50H4z" surface="M4 26H66" />
      <path className="d-ink" d="M4 16V52H66V16" style={{ strokeWidth: 2 }} />
      <Ticks
        at={[
          [28, 63],
          [76, 71],
          [118, 103],
          [158, 141],
          [208, 177],
          [262, 187],
          [306, 187],
        ]}
      />
      <path className="d-ground" d="M0 62H70C110 72 140 140 190 170L226 186H328" />
      <path
        className="d-wall"
        d="M62 44C116 46 146 124 196 154L222 164H240"
        style={{ strokeWidth: 8 }}
      />
      <path
        className="d-bore"
        d="M60 44C116 46 146 124 196 154L222 164H240"
        style={{ strokeWidth: 4.5 }}
      />
      <path className="d-metal" d="M236 156h10v-18h-10zM240 158h12v12h-12z" />
      <circle className="d-metal" cx="241" cy="112" r="28" />
      <circle className="d-sheet" cx="241" cy="112" r="23" />
      <path
        className="d-edge"
        d="M225 128l4 -4M220 112h5M226 97l3 4M241 91v5M256 97l-3 4M262 112h-5M257 128l-4 -4"
      />
      <path className="d-ink" d="M241 112L229 99" style={{ strokeWidth: 2.25 }} />
      <Says x={276} y={104} tone="strong">
        class
      </Says>
      <Says x={276} y={120} tone="strong">
        range
      </Says>
      <path className="d-waterline is-broken" d="M66 26H312" />
      <Measure from={[306, 26]} to={[306, 84]} />
      <path className="d-edge is-broken" d="M250 166H322" />
      <Measure from={[306, 128]} to={[306, 166]} />
      <Says x={324} y={208} lean="end" tone="second">
        gauge’s own height
      </Says>
      <Says x={84} y={20} tone="of-water">
        {upper}
      </Says>
      <Says x={110} y={182} lean="middle" tone="second">
        full and still
      </Says>
    </Leaf>
  );
}

function Coarse({ height, spread }: { readonly height: HeightName; readonly spread: string }) {
  const { upper, lower } = NAMES[height];
  return (
    <Leaf
      height={200}
      says={`One instrument read at two places, ${upper} and ${lower}. Each reading is uncertain by metres, as the wide bars show.`}
    >
      <Ticks
        at={[
          [24, 93],
          [70, 95],
          [128, 127],
          [176, 155],
          [232, 171],
          [290, 171],
        ]}
      />
      <path className="d-ground" d="M0 92H70C130 100 160 166 220 170H328" />
      <rect className="d-stone" x="26" y="62" width="18" height="28" rx="2" />
      <rect className="d-stone" x="272" y="140" width="18" height="28" rx="2" />
      <path className="d-edge" d="M30 68h10v8H30zM276 146h10v8h-10z" />
      <path
        className="d-edge"
        d="M58 40V120M50 40h16M50 120h16M252 116V196M244 116h16M244 196h16"
      />
      <circle className="d-solid" cx="58" cy="80" r="4" />
      <circle className="d-solid" cx="252" cy="156" r="4" />
      <Says x={72} y={60} tone="strong">
        {`312 ± ${spread}`}
      </Says>
      <Says x={240} y={136} lean="end" tone="strong">
        {`288 ± ${spread}`}
      </Says>
      <Says x={4} y={20} tone="of-water">
        {upper}
      </Says>
      <Says x={324} y={108} lean="end" tone="second">
        {lower}
      </Says>
    </Leaf>
  );
}

export const HEIGHT_DRAWINGS = {
  levels: Levels,
  hops: Hops,
  gauge: Gauge,
  barometric: ({ height }: { readonly height: HeightName }) => (
    <Coarse height={height} spread="2 m" />
  ),
  satellite: ({ height }: { readonly height: HeightName }) => (
    <Coarse height={height} spread="5 m" />
  ),
} as const;
