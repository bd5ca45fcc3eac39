/**
 * A test as YAML: the reader of YAML is fetched when a file is there to be read or made. The page fetches this file and never
 * `@fallwright/records` itself, which would make one piece of all its readers and hand that to every page.
 */
export { LONGEST_TEST, readTest, testFromData, writeTest } from '@fallwright/records';
