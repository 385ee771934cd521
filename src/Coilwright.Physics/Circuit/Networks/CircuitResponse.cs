namespace Coilwright.Physics.Circuit.Networks;

/// <summary>
/// What arrives behind a whole circuit of pickups, controls and load for 1 V induced in every string-facing coil of level 1.
/// </summary>
/// <remarks>
/// Exact node equations; see <see cref="NetworkCurve"/>. With a buffer the two sides are solved apart and multiplied.
/// Singular cases: an output shorted by a control at 0, and pickups that cancel at 20 Hz, give a silent response (see
/// <see cref="Response.IsSilent"/>).
/// </remarks>
public static class CircuitResponse
{
    /// <summary>Below this ratio at 20 Hz nothing is said to arrive: gains relative to it would be rounding.</summary>
    private const double LeastGain = 1e-9;

    /// <summary>Response at given frequencies.</summary>
    /// <param name="circuit">The circuit; its members state their ranges.</param>
    /// <param name="frequenciesHz">Frequencies, Hz, 1 mHz…1 GHz, in any order; the points are in theirs.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside its range.</exception>
    public static Response Compute(GuitarCircuit circuit, ReadOnlySpan<double> frequenciesHz)
    {
        TwoStages stages = new(circuit);
        foreach (double hz in frequenciesHz)
        {
            Require.InRange(hz, 1e-3, 1e9, nameof(frequenciesHz));
        }

        double reference = stages.IsSilent ? 0 : 1 / Math.Sqrt(stages.Attenuation(PickupResponse.ReferenceHz));
        ResponsePoint[] points = GC.AllocateUninitializedArray<ResponsePoint>(frequenciesHz.Length); // every one is written below
        if (!(reference > LeastGain))
        {
            for (int i = 0; i < points.Length; i++)
            {
                points[i] = new ResponsePoint(frequenciesHz[i], double.NegativeInfinity, 0, 0);
            }

            return new Response(points, 0, true);
        }

        stages.Write(points, frequenciesHz, reference);
        return new Response(points, reference, false);
    }

    /// <summary>
    /// The highest point between 20 Hz and <paramref name="toHz"/>; null when the curve never rises above its level at 20 Hz, still rises
    /// at the end, or is silent.
    /// </summary>
    /// <param name="circuit">The circuit; its members state their ranges.</param>
    /// <param name="toHz">Upper end of the search, Hz, 40 Hz…1 GHz.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside its range.</exception>
    public static ResonancePeak? FindPeak(GuitarCircuit circuit, double toHz = PickupResponse.SearchEndHz) =>
        Heard(circuit) is { } stages
            ? CurveSearch.HighestPoint(stages, PickupResponse.ReferenceHz, Require.InRange(toHz, 2 * PickupResponse.ReferenceHz, 1e9))
            : null;

    /// <summary>
    /// The last frequency up to <paramref name="toHz"/> at which the response falls through half the power it has at 20 Hz, Hz; null when
    /// it is not below that at the end, or silent.
    /// </summary>
    /// <param name="circuit">The circuit; its members state their ranges.</param>
    /// <param name="toHz">Upper end of the search, Hz, 40 Hz…1 GHz.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside its range.</exception>
    public static double? FindMinus3Db(GuitarCircuit circuit, double toHz = PickupResponse.SearchEndHz) =>
        Heard(circuit) is { } stages
            ? CurveSearch.LastFall(
                stages,
                PickupResponse.ReferenceHz,
                Require.InRange(toHz, 2 * PickupResponse.ReferenceHz, 1e9),
                PickupResponse.DropDb
            )
            : null;

    /// <summary>
    /// Thermal noise at the output, V r.m.s.: √∫4kT·Re Z df, every resistance at one temperature; the noise of an amplifier's own parts is
    /// not in it.
    /// </summary>
    /// <param name="circuit">The circuit; its members state their ranges.</param>
    /// <param name="fromHz">Lower end of the band, Hz, 1 mHz…1 GHz.</param>
    /// <param name="toHz">Upper end, Hz, above the lower one, at most 1 GHz.</param>
    /// <param name="temperatureC">Temperature, °C, −40…155.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside its range.</exception>
    public static double ThermalNoiseV(GuitarCircuit circuit, double fromHz = 20, double toHz = 20_000, double temperatureC = 20) =>
        ThermalNoise.Volt(new TwoStages(circuit), fromHz, toHz, temperatureC);

    private static TwoStages? Heard(GuitarCircuit circuit)
    {
        TwoStages stages = new(circuit);
        return stages.IsSilent || 1 / Math.Sqrt(stages.Attenuation(PickupResponse.ReferenceHz)) <= LeastGain ? null : stages;
    }
}
