namespace Coilwright.Physics.BoundaryElements;

/// <summary>What the model of bars leaves out.</summary>
internal static class BarNotes
{
    /// <summary>Ferrites conduct so much less that their eddy currents do not count, S/m.</summary>
    private const double LeastConductingSPerM = 1e5;

    /// <summary>
    /// A conducting bar's permeability follows that of a wide slab: currents within its thickness. Those that circle in its broad face, as
    /// in a plate, are left out.
    /// Coarse finite elements of our own gave 2.6 times this loss for a bar (2 MS/m) under one winding at 20 kHz, and 0.7 to 0.8 times for
    /// one between two rows of poles.
    /// </summary>
    public static IEnumerable<FieldNote> Describe(FieldProblem problem)
    {
        string[] materials =
        [
            .. problem.Bars.Where(bar => bar.ConductivitySPerM.Value >= LeastConductingSPerM).Select(bar => bar.Material).Distinct(),
        ];
        return materials.Length == 0
            ? []
            :
            [
                new FieldNote(
                    "magnets",
                    $"bars of {string.Join(", ", materials)} conduct: only the eddy currents within their thickness are reckoned; their "
                        + $"loss at high frequency may be off by a factor of two to three, most for a bar under a single winding "
                        + $"(coarse finite elements of our own)"
                ),
            ];
    }
}
