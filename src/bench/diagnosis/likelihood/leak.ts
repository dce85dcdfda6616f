/** Ohms from which what a meter shows is no element: a break that leaks through damp, soot or the fingers at the probes. Common practice. */
export const LEAK = 1e5;
