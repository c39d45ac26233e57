/** Style sheets are imported for their effect; the bundler gathers them. */
declare module '*.css';

/** A file that is shipped beside the program as it is; what is imported is its address. */
declare module '*?url' {
  const address: string;
  export default address;
}
