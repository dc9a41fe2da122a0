// Bytes handed to the program go over its heap: by themselves they would go onto its stack, which is small and overflows unseen.

/** Has `program.ccall` put every 'array' on the heap for the time of the call. */
export function passBytesOverHeap(program) {
  const { ccall } = program;
  program.ccall = (name, result, types = [], values = []) => {
    const taken = [];
    const put = (bytes) => {
      const at = program._malloc(Math.max(1, bytes.length));
      if (at === 0) throw new RangeError(`no memory for ${bytes.length} bytes`);
      taken.push(at);
      program.HEAPU8.set(bytes, at);
      return at;
    };
    try {
      const passed = values.map((value, i) => (types[i] === 'array' ? put(value) : value));
      return ccall(name, result, types.map((type) => (type === 'array' ? 'number' : type)), passed);
    } finally {
      for (const at of taken) program._free(at);
    }
  };
}
