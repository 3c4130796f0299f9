/** Wire colours that people name, offered where a colour is written. */
export const wireColours: readonly string[] = [
  'black',
  'red',
  'yellow',
  'green',
  'blue',
  'white',
  'orange',
  'violet',
  'grey',
  'brown',
  'pink',
  'turquoise',
  'green/yellow',
];
