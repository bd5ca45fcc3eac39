/** How a flow is measured, one small drawing for each way. Shapes only: nothing here is to scale. */
import { Leaf, Measure, Says, Ticks, Watch, Water } from './parts.tsx';

function Bucket() {
  return (
    <Leaf
      height={204}
      says="All of the spring’s water runs from a pipe into a bucket with a mark, while a watch counts the seconds."
    >
      <Ticks
        at={[
          [24, 77],
          [52, 77],
          [120, 187],
          [164, 187],
          [208, 187],
          [252, 187],
          [296, 187],
        ]}
      />
      <Water d="M0 58H62V74H0z" surface="M0 58H62" />
      <path className="d-stone" d="M60 46h16v66H60z" />
      <path className="d-ground" d="M0 76H60M76 112L92 186H328" />
      <path className="d-wall" d="M48 66L122 74" style={{ strokeWidth: 13 }} />
      <path className="d-bore" d="M48 66L123 74" style={{ strokeWidth: 8 }} />
      <path className="d-water" d="M123 70C150 72 162 96 164 140H152C150 104 142 84 122 78z" />
      <path
        className="d-surface"
        d="M123 71C150 73 162 98 163 138M122 77C142 82 151 104 153 138M123 74C146 76 156 98 158 138"
      />
      <Water d="M124 146H194L187 184H131z" surface="M124 146H194" />
      <path className="d-ink" d="M116 104L131 185H187L202 104" style={{ strokeWidth: 2.25 }} />
      <path className="d-edge" d="M113 104h9M196 104h9M116 104C130 66 188 66 202 104" />
      <path className="d-ink" d="M198 118H226" />
      <Says x={230} y={122} tone="strong">
        mark
      </Says>
      <Watch x={276} y={42} reads="26.4 s" />
      <Says x={4} y={36} tone="of-water">
        all of the water
      </Says>
    </Leaf>
  );
}

/** The stream before and behind a plate, from the side: where its head is read. */
function HeadFromTheSide({ crest }: { readonly crest: number }) {
  return (
    <>
      <path className="d-water" d="M188 64H288C298 65 303 72 304 84L310 160H328V178H188z" />
      <path className="d-waterhatch" d="M188 64H288V178H188z" />
      <path className="d-surface" d="M188 64H286C297 65 303 72 304 84L310 160H328" />
      <path className="d-stone" d={`M290 ${crest}h7V178h-7z`} />
      <path className="d-ground" d="M188 178H328" />
      <Ticks
        at={[
          [212, 179],
          [252, 179],
          [292, 179],
        ]}
      />
      <path className="d-stone" d={`M232 ${crest}h8V178h-8z`} />
      <path className="d-edge is-broken" d={`M240 ${crest}H290`} />
      <Measure from={[222, 64]} to={[222, crest]} letter="h" lean="end" />
      <Measure from={[236, 50]} to={[293, 50]} />
      <Says x={264} y={40} lean="middle" tone="second">
        4 h or more
      </Says>
      <Measure from={[314, crest]} to={[314, 160]} />
      <text
        className="d-label second"
        transform={`rotate(-90 326 ${(crest + 160) / 2})`}
        x={326}
        y={(crest + 160) / 2}
        textAnchor="middle"
      >
        free drop
      </text>
      <Says x={258} y={200} lean="middle" tone="second">
        from the side
      </Says>
      <Says x={192} y={18} tone="of-water">
        still water here
      </Says>
    </>
  );
}

const BANKS = (
  <>
    <path className="d-ground" d="M0 42H14L28 178H152L166 42H180" />
    <Ticks
      at={[
        [9, 43],
        [52, 179],
        [88, 179],
        [124, 179],
      ]}
    />
    <Says x={90} y={200} lean="middle" tone="second">
      from downstream
    </Says>
  </>
);

function VNotch() {
  return (
    <Leaf
      height={208}
      says="A thin plate with a V-shaped notch across the stream. The head h is the height of the still water above the point of the notch, read from a peg four heads upstream."
    >
      <path className="d-sheet" d="M14 44H166L152 178H28z" />
      <Water d="M54 64H126L90 100z" surface="M54 64H126" />
      <path className="d-ink" d="M14 44H34L90 100L146 44H166" style={{ strokeWidth: 2 }} />
      <path
        className="d-water"
        d="M78 91L90 103L102 91C101 112 98 130 98 160H82C82 130 79 112 78 91z"
      />
      <path
        className="d-surface"
        d="M79 94C80 114 83 132 83 158M90 104V160M101 94C100 114 97 132 97 158"
      />
      <Water d="M27 160H153L152 178H28z" surface="M27 160H76M104 160H153" />
      {BANKS}
      <path className="d-edge" d="M78 88A17 17 0 0 1 102 88" />
      <Says x={90} y={82} lean="middle" tone="strong">
        angle
      </Says>
      <HeadFromTheSide crest={100} />
    </Leaf>
  );
}

function RectangularWeir() {
  return (
    <Leaf
      height={208}
      says="A thin plate with a level crest across the stream. Its width, the width of the channel, the height of the crest above the bed, and the head h read from a peg four heads upstream."
    >
      <path className="d-sheet" d="M14 44H166L152 178H28z" />
      <Water d="M50 64H130V92H50z" surface="M50 64H130" />
      <path className="d-ink" d="M14 44H50V92H130V44H166" style={{ strokeWidth: 2 }} />
      <path className="d-water" d="M52 92H128L124 160H56z" />
      <path className="d-surface" d="M53 94L57 158M78 94L79 158M102 94L101 158M127 94L123 158" />
      <Water d="M27 160H153L152 178H28z" surface="M27 160H56M124 160H153" />
      {BANKS}
      <Measure from={[50, 34]} to={[130, 34]} letter="width" />
      <Measure from={[140, 92]} to={[140, 178]} />
      <Says x={136} y={134} lean="end" tone="second">
        crest height
      </Says>
      <HeadFromTheSide crest={92} />
    </Leaf>
  );
}

function Float() {
  return (
    <Leaf
      height={208}
      says="A stream from above: a float goes a measured length between two strings while a watch counts. Below, its section, with depths in the middle of equal strips."
    >
      <path
        className="d-water"
        d="M0 30C60 24 110 34 170 28S270 26 328 32V84C270 90 210 80 150 86S50 82 0 86z"
      />
      <path
        className="d-waterhatch"
        d="M0 30C60 24 110 34 170 28S270 26 328 32V84C270 90 210 80 150 86S50 82 0 86z"
      />
      <path
        className="d-ground"
        d="M0 30C60 24 110 34 170 28S270 26 328 32M0 86C50 82 90 92 150 86S270 90 328 84"
      />
      <path className="d-ink is-broken" d="M60 18V98M220 18V98" />
      <circle className="d-metal" cx="128" cy="57" r="8" />
      <path className="d-surface" d="M140 57H176M170 52l7 5l-7 5" />
      <Measure from={[60, 20]} to={[220, 20]} />
      <Says x={140} y={14} lean="middle" tone="strong">
        length
      </Says>
      <Watch x={280} y={134} reads="41 s" />
      <Water d="M24 128H204L186 166C150 184 80 184 44 164z" surface="M24 128H204" />
      <path className="d-ground" d="M4 118L24 128L44 164C80 184 150 184 186 166L204 128L224 118" />
      <path className="d-edge" d="M42 128V160M78 128V176M114 128V179M150 128V177M186 128V164" />
      <Measure from={[24, 118]} to={[204, 118]} letter="width" />
      <Says x={4} y={200} tone="second">
        depths in the middle of equal strips
      </Says>
    </Leaf>
  );
}

function Drop() {
  return (
    <Leaf
      height={186}
      says="A tank from the side. Its surface sinks by a measured drop while a watch counts, with nothing else running in or out."
    >
      <Ticks
        at={[
          [24, 161],
          [80, 161],
          [136, 161],
          [192, 161],
          [248, 161],
          [304, 161],
        ]}
      />
      <path className="d-stone" d="M28 40h10v112h152V40h10v120H28z" />
      <Water d="M38 96H190V152H38z" surface="M38 96H190" />
      <path className="d-waterline is-broken" d="M38 64H190" />
      <Measure from={[114, 64]} to={[114, 96]} letter="drop" />
      <Measure from={[38, 28]} to={[190, 28]} letter="area of the surface" />
      <path className="d-wall" d="M194 142H226V150" style={{ strokeWidth: 9 }} />
      <path className="d-bore" d="M188 142H226V152" style={{ strokeWidth: 5 }} />
      <path className="d-surface" d="M224 150V160M228 150V160" />
      <path className="d-ground" d="M0 160H328" />
      <Says x={212} y={122} tone="second">
        one way only
      </Says>
      <Watch x={284} y={52} reads="5 min" />
    </Leaf>
  );
}

export const FLOW_DRAWINGS = {
  bucket: Bucket,
  'v-notch': VNotch,
  'rectangular weir': RectangularWeir,
  float: Float,
  drop: Drop,
} as const;
