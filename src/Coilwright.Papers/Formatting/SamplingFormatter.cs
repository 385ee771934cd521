using System.Globalization;
using Coilwright.Analysis.Sampling;

namespace Coilwright.Papers.Formatting;

/// <summary>A sampling plan in sentences, the same on screen and terminal.</summary>
public static class SamplingFormatter
{
    /// <summary>How many pieces to look at, and when to accept.</summary>
    public static string Count(AttributePlan plan, int pieces)
    {
        SampleStage stage = plan.Stages[0];
        string sample = stage.Size >= pieces ? $"every one of the {Number(pieces)}" : $"{stage.Size} of {Number(pieces)}";
        return string.Create(
            CultureInfo.InvariantCulture,
            $"Look at {sample} pieces. Accept with {stage.Accept} defective or fewer, refuse with {stage.Reject} or more."
        );
    }

    /// <summary>What that lets through.</summary>
    public static string Chances(AttributePlan plan, double aqlPercent) =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"A lot with {aqlPercent:0.###} % defective is accepted {100 * plan.AcceptProbability(aqlPercent / 100):0.0} times in 100; "
                + $"one with {100 * plan.DefectiveAt(0.10):0.0} % defective 10 times."
        );

    /// <summary>How many pieces to measure, and when to accept.</summary>
    public static string Measure(TabulatedVariablesPlan plan, int pieces) =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"Measure {Math.Min(plan.Size, pieces)} of {pieces:#,##0} pieces. Accept when the part estimated beyond the "
                + $"limits is at most {100 * plan.LargestBeyond:0.00} %; for one limit: when it lies at least "
                + $"{plan.K:0.000} spreads from the mean."
        );

    /// <summary>Where the plan stands.</summary>
    public static string Tables(bool measured) =>
        $"Tables: {(measured ? "MIL-STD-414, level II" : "MIL-STD-105E")}, as read in an open statistics package; what a customer agreed "
        + "on goes before.";

    private static string Number(int pieces) => pieces.ToString("#,##0", CultureInfo.InvariantCulture);
}
