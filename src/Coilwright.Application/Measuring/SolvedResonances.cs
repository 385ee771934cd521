using Coilwright.Analysis.Curves;
using Coilwright.Formats.Curves;

namespace Coilwright.Application.Measuring;

/// <summary>What resonances with known capacitors told, with the readings it rests on.</summary>
public sealed record SolvedResonances(ResonanceAnswer Answer, IReadOnlyList<ResonanceReading> Readings);
