namespace Coilwright.Analysis.Diagnosis;

/// <summary>What each cause does to a coil's readings, and how often it is taken to happen.</summary>
/// <remarks>
/// Shifts are in natural logarithms of read over wanted. Priors and scatters are our assumptions: common practice at best, no source. They are round numbers on purpose.
/// </remarks>
internal static class CauseTable
{
    /// <summary>ln of the ratio in ohms per metre between neighbouring AWG sizes: 2·ln(92^(1/39)) (the gauge's definition).</summary>
    private const double AwgStep = 0.23189;

    private static readonly Spread s_steady = new(0, 0.015);
    private static readonly Spread s_counted = new(0, 0.001);

    /// <summary>Mean and standard deviation of a logarithm.</summary>
    internal readonly record struct Spread(double Mean, double Deviation);

    /// <summary>One size of one cause.</summary>
    /// <param name="Weight">Its share among the sizes of that cause.</param>
    /// <param name="Size">How big: part of the turns, kelvin or gauge steps.</param>
    /// <param name="Ohm">ln R/R₀.</param>
    /// <param name="Henry">ln L/L₀.</param>
    /// <param name="Quality">ln Q/Q₀.</param>
    /// <param name="Turns">ln of counted over wanted turns.</param>
    internal sealed record Term(double Weight, double Size, Spread Ohm, Spread Henry, Spread Quality, Spread Turns);

    /// <summary>A cause with its prior; the terms' weights sum to one.</summary>
    internal sealed record Hypothesis(string Name, double Prior, IReadOnlyList<Term> Terms);

    /// <summary>The causes that this kind of reading can have.</summary>
    internal static IEnumerable<Hypothesis> Of(CoilEvidence evidence)
    {
        yield return new Hypothesis("none", 0.80, [Shift(1, 0, 0, 0.010)]);
        yield return new Hypothesis("thin-wire", 0.03, [Shift(1, 0, 0.04, 0.025)]);
        yield return new Hypothesis("thick-wire", 0.03, [Shift(1, 0, -0.04, 0.025)]);
        yield return new Hypothesis("miscount", 0.03, [.. Miscounts()]);
        yield return new Hypothesis("warm-coil", evidence.TemperatureKnown ? 0.005 : 0.05, [.. Warmths(evidence.TemperatureKnown ? 4 : 8)]);
        yield return new Hypothesis("shorted-turns", 0.015, [.. Shorts()]);
        yield return new Hypothesis("high-resistance-joint", 0.004, [.. Joints()]);
        yield return new Hypothesis("wrong-gauge", 0.006, [.. Gauges()]);
        yield return new Hypothesis("broken-coupled", 0.005, [new Term(1, 0, new Spread(Math.Log(3e5 / evidence.NominalOhm), 1.2), new Spread(0, 3), new Spread(-1, 2), s_counted)]);
        yield return new Hypothesis("meter-error", 0.01, [new Term(1, 0, new Spread(0, 1.2), s_steady, new Spread(0, 0.3), s_counted)]);
        if (evidence.CoilsInSeries >= 2)
        {
            double coils = evidence.CoilsInSeries, left = (coils - 1) / coils;
            yield return new Hypothesis("coil-bridged", 0.01, [new Term(1, 0, new Spread(Math.Log(left), 0.03), new Spread(Math.Log(0.9 * left), 0.15), new Spread(0, 0.3), s_counted)]);
            yield return new Hypothesis("wired-parallel", 0.005, [new Term(1, 0, new Spread(-2 * Math.Log(coils), 0.03), new Spread(-2 * Math.Log(coils), 0.15), new Spread(0, 0.3), s_counted)]);
        }
    }

    /// <summary>Only the resistance moves; Q goes down by as much as it goes up.</summary>
    private static Term Shift(double weight, double size, double ohm, double scatter) =>
        new(weight, size, new Spread(ohm, scatter), s_steady, new Spread(-ohm, 0.06 + scatter), s_counted);

    /// <summary>Turns off by a normal 4 %: L as the square, R a little more than in proportion because the outer turns are longer. The counter shows it or does not.</summary>
    private static IEnumerable<Term> Miscounts()
    {
        const double Deviation = 0.04;
        double[] sizes = [.. Enumerable.Range(-60, 121).Where(n => n != 0).Select(n => n * 0.0025)];
        double total = sizes.Sum(size => Bell(size / Deviation));
        foreach (double size in sizes)
        {
            double weight = Bell(size / Deviation) / total / 2, shift = Math.Log(1 + size);
            Term unseen = new(weight, size, new Spread(1.05 * shift, 0.008), new Spread(2 * shift, 0.015), new Spread(shift, 0.06), s_counted);
            yield return unseen;
            yield return unseen with { Turns = new Spread(shift, 0.002) };
        }
    }

    /// <summary>Warmer than taken by about 10 K, fresh from the winder or the hand.</summary>
    private static IEnumerable<Term> Warmths(double deviation)
    {
        const double Mean = 10;
        double[] sizes = [.. Enumerable.Range(2, 39).Select(kelvin => (double)kelvin)];
        double total = sizes.Sum(size => Bell((size - Mean) / deviation));
        return sizes.Select(size => Shift(Bell((size - Mean) / deviation) / total, size, Math.Log(1 + 0.00393 * size), 0.008));
    }

    /// <summary>A part f of the turns shorted: R falls by f, L by (1−f)² and, as the short is coupled to the rest, often by more; Q falls most of all.</summary>
    private static IEnumerable<Term> Shorts()
    {
        double[] parts = [.. Steps(0.003, 0.97, 200), 0.99, 0.999, 0.9999];
        foreach (double part in parts)
        {
            double left = Math.Log(1 - part);
            Term little = new(0.6 / parts.Length, part, new Spread(left, 0.01 + 0.02 * part), new Spread(2 * left, 0.02), new Spread(left - 0.5, 0.35), s_counted);
            yield return little;
            yield return little with { Weight = 0.4 / parts.Length, Henry = new Spread(2 * left - 0.2, 0.15) };
        }
    }

    /// <summary>Anything from 2 % to twice the coil's own resistance, in series with it.</summary>
    private static IEnumerable<Term> Joints()
    {
        const int Count = 100; // neighbours nearer than their scatter
        return Steps(0.02, 2, Count).Select(extra => Shift(1.0 / Count, extra, Math.Log(1 + extra), 0.01 + 0.02 * extra / (1 + extra)));
    }

    /// <summary>Half, one or two gauges off; the nearer the likelier. The build changes, so L moves a little.</summary>
    private static IEnumerable<Term> Gauges()
    {
        double[] steps = [-2, -1, -0.5, 0.5, 1, 2];
        double total = steps.Sum(step => 1 / Math.Abs(step));
        return steps.Select(step => Shift(1 / Math.Abs(step) / total, step, step * AwgStep, 0.03) with { Henry = new Spread(0, 0.03) });
    }

    private static IEnumerable<double> Steps(double from, double to, int count) =>
        Enumerable.Range(0, count).Select(n => from * Math.Pow(to / from, n / (count - 1.0)));

    private static double Bell(double x) => Math.Exp(-0.5 * x * x);
}
