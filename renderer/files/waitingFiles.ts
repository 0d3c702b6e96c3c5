import { ref } from 'vue';

/** Counts what was added to the files that wait from elsewhere on the page; a list of them reads again. */
export const addedElsewhere = ref(0);
