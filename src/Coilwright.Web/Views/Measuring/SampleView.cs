using System.Globalization;
using Coilwright.Analysis.Sampling;
using Coilwright.Application.Measuring;
using Coilwright.Papers.Figures;
using Coilwright.Papers.Formatting;

namespace Coilwright.Web.Views.Measuring;

/// <summary>A sampling plan as its page shows it.</summary>
public sealed record SampleView(SamplingAnswer Answer)
{
    private SamplingQuestion Asked => Answer.Asked;

    /// <summary>How many pieces to take.</summary>
    public string Size
    {
        get
        {
            int size = Answer.Counted?.FirstSample ?? Answer.ByMeasuring!.Size;
            return Math.Min(size, Asked.Lot).ToString("#,##0", CultureInfo.InvariantCulture);
        }
    }

    /// <summary>What to do with them.</summary>
    public IReadOnlyList<string> Sentences =>
        Answer switch
        {
            { Counted: { } plan } => [SamplingFormatter.Count(plan, Asked.Lot), SamplingFormatter.Chances(plan, Asked.AqlPercent)],
            { ByMeasuring: { } plan } => [SamplingFormatter.Measure(plan, Asked.Lot)],
            _ => [],
        };

    /// <summary>Where the plan stands.</summary>
    public string Tables => SamplingFormatter.Tables(Asked.Measured);

    /// <summary>How often a lot is accepted; null where pieces are measured.</summary>
    public DrawingViewModel? Figure => Answer.Counted is { } plan ? Drawn(plan) : null;

    private DrawingViewModel Drawn(AttributePlan plan)
    {
        double good = Asked.AqlPercent / 100,
            bad = plan.DefectiveAt(0.1),
            last = Math.Min(1, 1.6 * bad);
        (double, double)[] curve =
        [
            .. Enumerable.Range(0, 121).Select(i => last * i / 120).Select(part => (part, plan.AcceptProbability(part))),
        ];
        return new DrawingViewModel(
            "Lots accepted of 100, by the part of the lot that is defective. A steeper curve needs a larger sample.",
            MeasuredFigures.Acceptance(curve, [(good, plan.AcceptProbability(good)), (bad, 0.1)])
        );
    }
}
