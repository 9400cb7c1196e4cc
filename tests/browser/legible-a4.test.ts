import { measurePaper } from './measure/suite.ts';

measurePaper('A4');
