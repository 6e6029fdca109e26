// The independent speller: the one function of it that the tests call.
declare module 'number-to-words' {
  const speller: { toWords(value: number): string };
  export default speller;
}
