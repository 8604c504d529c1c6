using System.Runtime.CompilerServices;

// The tests, the calibration and the benchmarks look at the equations themselves; nobody else does.
[assembly: InternalsVisibleTo("FermentWatch.Kinetics.Tests")]
[assembly: InternalsVisibleTo("FermentWatch.Reference.Tests")]
[assembly: InternalsVisibleTo("FermentWatch.Calibration")]
[assembly: InternalsVisibleTo("FermentWatch.Benchmarks")]
