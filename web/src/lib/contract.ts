// Written by the tests from the records in src/Scuff.App/Web/Contract; not by hand.
