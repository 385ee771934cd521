using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Exports;

namespace Coilwright.Application.Exports;

/// <summary>What came of reading an export.</summary>
/// <param name="Manifest">What the export says of itself; null when that cannot be read.</param>
/// <param name="Problems">Everything that stands against bringing it in; empty when nothing does.</param>
/// <param name="Notes">What is no fault and worth knowing.</param>
/// <param name="IsDone">True when the shop was filled.</param>
public sealed record ImportOutcome(
    ExportManifest? Manifest,
    IReadOnlyList<Problem> Problems,
    IReadOnlyCollection<string> Notes,
    bool IsDone
);
