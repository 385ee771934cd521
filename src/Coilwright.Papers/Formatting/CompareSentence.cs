using Coilwright.Analysis.Comparisons;
using Coilwright.Analysis.Quantities;
using Coilwright.Physics;

namespace Coilwright.Papers.Formatting;

/// <summary>What a player would hear between two designs, in words, from numbers whose intervals leave out no change.</summary>
public static class CompareSentence
{
    /// <summary>"B is 2.1 ±0.8 dB louder than A; its peak is 0.62 kHz ±0.11 kHz lower and 1.3 ±0.4 dB higher."</summary>
    /// <param name="against">Name of the design it is told against.</param>
    /// <param name="name">Name of the design.</param>
    /// <param name="lines">The design against the other.</param>
    public static string Of(string against, string name, IReadOnlyList<ComparisonLine> lines)
    {
        ComparisonLine? output = Find(lines, QuantityKey.Output),
            peak = Find(lines, QuantityKey.LoadedPeak),
            height = Find(lines, QuantityKey.LoadedPeakGain);
        if (!new[] { output, peak, height }.Any(line => line is { Differs: true }))
        {
            return $"Between {name} and {against} there is no difference in loudness or peak that the intervals would show.";
        }

        return $"{name} is {Loudness(output, against)}; {Peak(peak, height)}.";
    }

    private static string Loudness(ComparisonLine? output, string against)
    {
        if (output is not { Differs: true })
        {
            return $"as loud as {against}, as far as the intervals tell";
        }

        string way = IsMore(output) ? "louder" : "quieter";
        return $"{Size(output)} {way} than {against}";
    }

    private static string Peak(ComparisonLine? peak, ComparisonLine? height) =>
        peak switch
        {
            { First: not null, Second: null } => "it has no peak",
            { First: null, Second: not null } => "it has a peak, which the other lacks",
            { Differs: true } => $"its peak is {Apart(peak)} {Level(peak)}" + (height is { Differs: true } ? And(height) : ""),
            _ when height is { Differs: true } =>
                $"its peak stands {Size(height)} {Level(height)}, at the same place as far as the intervals tell",
            _ => "its peak is the same as far as the intervals tell",
        };

    private static string And(ComparisonLine height) => $" and stands {Size(height)} {Level(height)}";

    private static ComparisonLine? Find(IReadOnlyList<ComparisonLine> lines, string name) =>
        lines.FirstOrDefault(line => line.Name == name);

    private static bool IsMore(ComparisonLine line) => line.Ratio is { } part ? part.Value > 1 : line.Difference is { Value: > 0 };

    private static string Level(ComparisonLine line) => IsMore(line) ? "higher" : "lower";

    /// <summary>A change without its sign, with half its interval.</summary>
    private static string Size(ComparisonLine line) => ComparisonFormatter.Change(line).TrimStart('+', '−');

    /// <summary>A distance in the quantity's own unit.</summary>
    private static string Apart(ComparisonLine line) =>
        line.Difference is { } change
            ? $"{FigureFormatter.Value(Math.Abs(change.Value), line.Unit, 2)} ±{FigureFormatter.Value(Half(change), line.Unit, 2)}"
            : Size(line);

    private static double Half(Estimate change) => (change.High - change.Low) / 2;
}
