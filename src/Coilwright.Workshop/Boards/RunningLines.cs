using System.Globalization;
using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Readings;

namespace Coilwright.Workshop.Boards;

/// <summary>What needs a person about a batch that is being wound.</summary>
internal static class RunningLines
{
    /// <summary>So many coils rejected one after another are no accident. Common practice, no source.</summary>
    private const int NoAccident = 2;

    public static IEnumerable<TodayLine> Of(BatchProgress run) => [.. Stops(run), .. Broke(run), .. Drifts(run), .. First(run)];

    private static IEnumerable<TodayLine> Stops(BatchProgress run)
    {
        CoilDossier[] rejected = [.. run.Status.Coils.Reverse().TakeWhile(coil => coil.Verdict.Kind == VerdictKind.Reject)];
        if (rejected.Length < NoAccident)
        {
            yield break;
        }

        Verdict newest = rejected[0].Verdict;
        string[] told =
        [
            $"{Count(rejected.Length)} rejected in a row, {rejected[^1].Tag} to {rejected[0].Tag}",
            VerdictAdvice.Cause(newest),
            VerdictAdvice.Check(newest) is { Length: > 0 } check ? $"before the next coil {check}" : "",
        ];
        yield return new TodayLine(TodayMark.Stop, run.Status.Batch.Name, Sentences(told), Batch("See the batch", run));
    }

    private static IEnumerable<TodayLine> Broke(BatchProgress run) =>
        run
            .History.OnSpindles.Where(coil => coil.State == SpindleState.Broken)
            .Select(coil => new TodayLine(
                TodayMark.Broke,
                $"{run.Status.Batch.Name}, coil {coil.Tag}",
                Sentences([$"the wire broke at {Turns(coil.Turns)} turns on {coil.Machine}: splice, end low or scrap"]),
                new WorkLink("Decide", WorkPlace.Winder, coil.Machine, run.Status.Batch.Id)
            ));

    private static IEnumerable<TodayLine> Drifts(BatchProgress run)
    {
        if (run.OpenSignals is not [.., var newest])
        {
            yield break;
        }

        string rules = string.Join("; ", run.OpenSignals.Where(signal => signal.Tag == newest.Tag).Select(signal => signal.Rule));
        yield return new TodayLine(
            TodayMark.Drift,
            run.Status.Batch.Name,
            Sentences([$"the run drifts at {newest.Tag}: {rules}", VerdictAdvice.DriftChecks]),
            Batch("See the chart", run)
        );
    }

    /// <summary>Only while nothing else was wound: a series that went on needs no release any more.</summary>
    private static IEnumerable<TodayLine> First(BatchProgress run)
    {
        if (run.History.Release is null && run.Status.Coils is [var first])
        {
            yield return new TodayLine(
                TodayMark.First,
                $"{run.Status.Batch.Name}, coil {first.Tag}",
                Sentences([
                    $"the first piece reads {first.Verdict.Kind.ToString().ToLowerInvariant()}",
                    "the series waits for its release",
                ]),
                new WorkLink("Look at it", WorkPlace.Winder, run.Status.Batch.Machine, run.Status.Batch.Id)
            );
        }
    }

    internal static WorkLink Batch(string words, BatchProgress run) => new(words, WorkPlace.Batch, BatchId: run.Status.Batch.Id);

    /// <summary>Parts as sentences of their own.</summary>
    internal static string Sentences(IEnumerable<string> parts) =>
        string.Join(
            " ",
            parts
                .Select(part => part.Trim().TrimEnd('.'))
                .Where(part => part.Length > 0)
                .Select(part => $"{char.ToUpperInvariant(part[0])}{part[1..]}.")
        );

    private static string Turns(double? turns) => turns is { } count ? count.ToString("#,##0", CultureInfo.InvariantCulture) : "?";

    private static string Count(int count) => count.ToString(CultureInfo.InvariantCulture);
}
