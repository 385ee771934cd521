using Coilwright.Formats.Judgements;
using Coilwright.Workshop.ControlCharts;
using Coilwright.Workshop.Readings;

namespace Coilwright.Application.Judging;

/// <summary>A judged table.</summary>
/// <param name="Pieces">A verdict for each line.</param>
/// <param name="Run">The chart of the run; null when there are too few.</param>
/// <param name="Charts">All charts, where they were asked for.</param>
/// <param name="Remarks">What is said of the table as a whole.</param>
public sealed record TableJudgement(
    IReadOnlyList<JudgedPiece> Pieces,
    RunChart? Run,
    ControlChart? Charts,
    IReadOnlyList<BatchRemark> Remarks
);
