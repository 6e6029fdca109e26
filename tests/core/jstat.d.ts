// The independent oracle for Student's t: the one function of it that the tests call.
declare module 'jstat' {
  const jstat: { readonly studentt: { inv(probability: number, degreesOfFreedom: number): number } };
  export default jstat;
}
