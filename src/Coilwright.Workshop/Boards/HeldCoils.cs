using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Readings;

namespace Coilwright.Workshop.Boards;

/// <summary>Coils on hold that stand in no piece: each waits for a person, of whatever batch it is.</summary>
internal static class HeldCoils
{
    /// <summary>More than these of one batch are told in one line.</summary>
    private const int Several = 2;

    public static IEnumerable<TodayLine> Of(BatchProgress run, IReadOnlySet<(Guid BatchId, string Tag)> used)
    {
        CoilDossier[] held =
        [
            .. run.Status.Coils.Where(coil => coil.Verdict.Kind == VerdictKind.Hold && !used.Contains((run.Status.Batch.Id, coil.Tag))),
        ];
        if (held.Length <= Several)
        {
            return held.Select(coil => Line(run, coil));
        }

        string tags = string.Join(", ", held.Take(4).Select(coil => coil.Tag)) + (held.Length > 4 ? " and more" : "");
        return
        [
            new TodayLine(
                TodayMark.Hold,
                run.Status.Batch.Name,
                $"{held.Length} coils are on hold: {tags}.",
                RunningLines.Batch("See them", run)
            ),
        ];
    }

    private static TodayLine Line(BatchProgress run, CoilDossier coil) =>
        new(
            TodayMark.Hold,
            $"{run.Status.Batch.Name}, coil {coil.Tag}",
            RunningLines.Sentences([VerdictAdvice.Brief(coil.Verdict), VerdictAdvice.Check(coil.Verdict)]),
            new WorkLink("Read it again", WorkPlace.Enter, coil.Tag, run.Status.Batch.Id)
        );
}
