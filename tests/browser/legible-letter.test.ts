import { measurePaper } from './measure/suite.ts';

measurePaper('Letter');
