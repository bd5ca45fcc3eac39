import { useLayoutEffect, useRef, useState } from 'react';

/** Judgement: narrower than any phone is a page still being laid out, and nothing can be drawn for it. */
const LEAST_WIDTH = 160;

/** The width of an element inside its padding, measured again when it changes; 0 while nothing can be drawn. */
export function useWidth<Kind extends HTMLElement>() {
  const ref = useRef<Kind>(null);
  const [width, setWidth] = useState(0);
  useLayoutEffect(() => {
    const element = ref.current;
    if (element === null) return;
    const measure = (): void => {
      const { paddingLeft, paddingRight } = getComputedStyle(element);
      const inner =
        element.clientWidth - Number.parseFloat(paddingLeft) - Number.parseFloat(paddingRight);
      setWidth(inner < LEAST_WIDTH ? 0 : Math.floor(inner));
    };
    measure();
    const observer = new ResizeObserver(measure);
    observer.observe(element);
    return () => observer.disconnect();
  }, []);
  return { ref, width };
}
