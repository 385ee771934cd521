using Coilwright.Physics.Circuit.Networks;

namespace Coilwright.Physics.Circuit;

/// <summary>What a pickup delivers into its load, from the closed-form network; peak and −3 dB point are found on the curve.</summary>
/// <remarks>
/// <para>
/// Topology. The string's voltage stands behind the series branch. Across the pickup's terminals: its own capacitance, its loss resistance,
/// and the tone control
/// (the share "setting" of its track in series with the capacitor; at 0 the capacitor alone). The volume control comes after these: (1 −
/// setting) of its
/// track in series, the rest from the wiper to ground, linear in resistance. Cable and input hang on the wiper. The tone control thus
/// stands in front of the volume control.
/// </para>
/// <para>
/// Source: Kirchhoff's laws; checked against a circuit simulator on random networks, on reference cases of two solvers, and by scaling and
/// limits.
/// Singular cases: volume at 0 gives a silent response (see <see cref="Response.IsSilent"/>); a network without any loss has a finite but
/// meaningless peak height.
/// </para>
/// </remarks>
public static class PickupResponse
{
    /// <summary>Gains are relative to the gain at this frequency.</summary>
    public const double ReferenceHz = 20;

    /// <summary>Upper end of the search for a peak and for the −3 dB point unless another is given, Hz.</summary>
    public const double SearchEndHz = 1e6;

    /// <summary>
    /// The drop of <see cref="FindMinus3Db(ISeriesBranch, double, double?, LoadCircuit, double)"/>, dB: what is called −3 dB is half the
    /// power, 10·lg 2 = 3.0103 dB.
    /// </summary>
    public const double DropDb = 3.010299956639812;

    /// <summary>Computes the response at given frequencies.</summary>
    /// <param name="source">Series branch of the pickup.</param>
    /// <param name="capacitanceF">Capacitance across its terminals, F, 0…1 mF.</param>
    /// <param name="parallelLossOhm">Loss resistance across its terminals, Ω, 1 mΩ…1 PΩ; null for none.</param>
    /// <param name="load">What hangs on it; its members state their ranges.</param>
    /// <param name="frequenciesHz">Frequencies, Hz, 1 mHz…1 GHz, in any order.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside its range.</exception>
    public static Response Compute(
        ISeriesBranch source,
        double capacitanceF,
        double? parallelLossOhm,
        LoadCircuit load,
        ReadOnlySpan<double> frequenciesHz
    )
    {
        if (!load.IsPlain)
        {
            return CircuitResponse.Compute(GuitarCircuit.FromCoil(source, capacitanceF, parallelLossOhm, load), frequenciesHz);
        }

        Ladder ladder = new(source, capacitanceF, parallelLossOhm, load);
        double reference = ladder.Attenuation(ReferenceHz);
        ResponsePoint[] points = new ResponsePoint[frequenciesHz.Length];
        for (int i = 0; i < points.Length; i++)
        {
            double frequencyHz = Require.InRange(frequenciesHz[i], 1e-3, 1e9, nameof(frequenciesHz));
            double attenuation = ladder.Solve(frequencyHz, out double re, out double im, out double impedanceSquared);
            points[i] = ladder.IsSilent
                ? new ResponsePoint(frequencyHz, double.NegativeInfinity, 0, 0)
                : new ResponsePoint(
                    frequencyHz,
                    10 * Math.Log10(reference / attenuation),
                    PhaseDegrees(re, im),
                    Math.Sqrt(impedanceSquared)
                );
        }

        return new Response(points, ladder.Gain(ReferenceHz), ladder.IsSilent);
    }

    /// <summary>The same for a lumped pickup.</summary>
    /// <param name="pickup">The pickup; its members state their ranges.</param>
    /// <param name="load">What hangs on it; its members state their ranges.</param>
    /// <param name="frequenciesHz">Frequencies, Hz, 1 mHz…1 GHz, in any order.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside its range.</exception>
    public static Response Compute(LumpedPickup pickup, LoadCircuit load, ReadOnlySpan<double> frequenciesHz) =>
        Compute(pickup, pickup.CapacitanceF, pickup.ParallelLossOhm, load, frequenciesHz);

    /// <summary>
    /// The highest point of the response between 20 Hz and <paramref name="toHz"/>, to 1e-6 of its frequency or as far as a flat top lets
    /// it be told.
    /// </summary>
    /// <param name="source">Series branch of the pickup.</param>
    /// <param name="capacitanceF">Capacitance across its terminals, F, 0…1 mF.</param>
    /// <param name="parallelLossOhm">Loss resistance across its terminals, Ω, 1 mΩ…1 PΩ; null for none.</param>
    /// <param name="load">What hangs on it; its members state their ranges.</param>
    /// <param name="toHz">Upper end of the search, Hz, 40 Hz…1 GHz.</param>
    /// <returns>Null when the curve never rises above its level at 20 Hz, still rises at <paramref name="toHz"/>, or is silent.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside its range.</exception>
    public static ResonancePeak? FindPeak(
        ISeriesBranch source,
        double capacitanceF,
        double? parallelLossOhm,
        LoadCircuit load,
        double toHz = SearchEndHz
    )
    {
        if (!load.IsPlain)
        {
            return CircuitResponse.FindPeak(GuitarCircuit.FromCoil(source, capacitanceF, parallelLossOhm, load), toHz);
        }

        Ladder ladder = new(source, capacitanceF, parallelLossOhm, load);
        return ladder.IsSilent ? null : CurveSearch.HighestPoint(ladder, ReferenceHz, Require.InRange(toHz, 2 * ReferenceHz, 1e9));
    }

    /// <summary>The same for a lumped pickup.</summary>
    /// <param name="pickup">The pickup; its members state their ranges.</param>
    /// <param name="load">What hangs on it; its members state their ranges.</param>
    /// <param name="toHz">Upper end of the search, Hz, 40 Hz…1 GHz.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside its range.</exception>
    public static ResonancePeak? FindPeak(LumpedPickup pickup, LoadCircuit load, double toHz = SearchEndHz) =>
        FindPeak(pickup, pickup.CapacitanceF, pickup.ParallelLossOhm, load, toHz);

    /// <summary>
    /// As <see cref="FindPeak(ISeriesBranch, double, double?, LoadCircuit, double)"/>, climbing from <paramref name="nearHz"/>: ten times
    /// quicker where the curve has one peak not far from there.
    /// </summary>
    /// <param name="source">Series branch of the pickup.</param>
    /// <param name="capacitanceF">Capacitance across its terminals, F, 0…1 mF.</param>
    /// <param name="parallelLossOhm">Loss resistance across its terminals, Ω, 1 mΩ…1 PΩ; null for none.</param>
    /// <param name="load">What hangs on it; its members state their ranges.</param>
    /// <param name="nearHz">Where to begin, Hz; what lies outside the search begins at its end.</param>
    /// <param name="toHz">Upper end of the search, Hz, 80 Hz or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number of the pickup or the load lies outside its range.</exception>
    /// <remarks>Searches everywhere when it finds no peak near by; of several peaks it may take the nearest.</remarks>
    public static ResonancePeak? FindPeakNear(
        ISeriesBranch source,
        double capacitanceF,
        double? parallelLossOhm,
        LoadCircuit load,
        double nearHz,
        double toHz = SearchEndHz
    )
    {
        if (!load.IsPlain)
        {
            return CircuitResponse.FindPeak(GuitarCircuit.FromCoil(source, capacitanceF, parallelLossOhm, load), toHz);
        }

        Ladder ladder = new(source, capacitanceF, parallelLossOhm, load);
        return ladder.IsSilent
            ? null
            : CurveSearch.PointNear(ladder, ReferenceHz, Math.Clamp(nearHz, 2 * ReferenceHz, toHz / 2), toHz)
                ?? CurveSearch.HighestPoint(ladder, ReferenceHz, toHz);
    }

    /// <summary>
    /// The last frequency up to <paramref name="toHz"/> at which the response falls through half the power it has at 20 Hz, Hz.
    /// </summary>
    /// <param name="source">Series branch of the pickup.</param>
    /// <param name="capacitanceF">Capacitance across its terminals, F, 0…1 mF.</param>
    /// <param name="parallelLossOhm">Loss resistance across its terminals, Ω, 1 mΩ…1 PΩ; null for none.</param>
    /// <param name="load">What hangs on it; its members state their ranges.</param>
    /// <param name="toHz">Upper end of the search, Hz, 40 Hz…1 GHz.</param>
    /// <returns>Null when it is not below that at <paramref name="toHz"/>, or silent.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside its range.</exception>
    public static double? FindMinus3Db(
        ISeriesBranch source,
        double capacitanceF,
        double? parallelLossOhm,
        LoadCircuit load,
        double toHz = SearchEndHz
    )
    {
        if (!load.IsPlain)
        {
            return CircuitResponse.FindMinus3Db(GuitarCircuit.FromCoil(source, capacitanceF, parallelLossOhm, load), toHz);
        }

        Ladder ladder = new(source, capacitanceF, parallelLossOhm, load);
        return ladder.IsSilent ? null : CurveSearch.LastFall(ladder, ReferenceHz, Require.InRange(toHz, 2 * ReferenceHz, 1e9), DropDb);
    }

    /// <summary>The same for a lumped pickup.</summary>
    /// <param name="pickup">The pickup; its members state their ranges.</param>
    /// <param name="load">What hangs on it; its members state their ranges.</param>
    /// <param name="toHz">Upper end of the search, Hz, 40 Hz…1 GHz.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside its range.</exception>
    public static double? FindMinus3Db(LumpedPickup pickup, LoadCircuit load, double toHz = SearchEndHz) =>
        FindMinus3Db(pickup, pickup.CapacitanceF, pickup.ParallelLossOhm, load, toHz);

    /// <summary>Frequencies spaced evenly in their logarithm, both ends included, Hz.</summary>
    /// <param name="fromHz">First, Hz, 1 mHz…1 GHz.</param>
    /// <param name="toHz">Last, Hz, from the first to 1 GHz.</param>
    /// <param name="count">How many, 2…100,000,000.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside its range.</exception>
    public static double[] LogFrequencies(double fromHz, double toHz, int count)
    {
        double from = Math.Log(Require.InRange(fromHz, 1e-3, 1e9)),
            to = Math.Log(Require.InRange(toHz, fromHz, 1e9));
        double[] frequenciesHz = new double[(int)Require.InRange(count, 2, 1e8)];
        for (int i = 0; i < count; i++)
        {
            frequenciesHz[i] = Math.Exp(from + (to - from) * i / (count - 1));
        }

        (frequenciesHz[0], frequenciesHz[^1]) = (fromHz, toHz);
        return frequenciesHz;
    }

    /// <summary>
    /// A grid with points added round a peak: 41 of them over four half-power widths, so that its top is drawn and read to a thousandth of
    /// a decibel.
    /// </summary>
    /// <param name="frequenciesHz">Rising frequencies, Hz.</param>
    /// <param name="peak">The peak.</param>
    public static double[] Refined(double[] frequenciesHz, ResonancePeak peak)
    {
        double reach = Math.Exp(Math.Min(1, 2 / Math.Max(peak.Q, 0.7)));
        double from = Math.Max(frequenciesHz[0], peak.FrequencyHz / reach),
            to = Math.Min(frequenciesHz[^1], peak.FrequencyHz * reach);
        return from >= to
            ? frequenciesHz
            : [.. frequenciesHz.Concat(LogFrequencies(from, to, 40)).Append(Math.Clamp(peak.FrequencyHz, from, to)).Distinct().Order()];
    }

    /// <summary>Minus the angle of re + j·im, which lies in 0…270° for passive parts, without the jump at 180°.</summary>
    private static double PhaseDegrees(double re, double im)
    {
        double angle = Math.Atan2(im, re);
        return (angle < -Math.PI / 2 ? angle + 2 * Math.PI : angle) * (-180 / Math.PI);
    }
}
