using System.Globalization;
using Coilwright.Workshop.Batches.Events;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Machines;
using Coilwright.Workshop.Readings;

namespace Coilwright.Workshop.Batches;

/// <summary>Turns what a person says happened into an event, if it can have happened.</summary>
internal sealed class BatchEventReader(BatchEventEntry said, BatchProgress run, Machine? machine, string machineName, KnownNames known)
{
    /// <summary>What may be said of a batch that was closed: what its coils taught.</summary>
    private static readonly BatchEventKind[] s_afterClosing = [BatchEventKind.SignalAnswered, BatchEventKind.CauseFound];

    /// <summary>What is said of the batch and not at a winder.</summary>
    private static readonly BatchEventKind[] s_ofBatch = [BatchEventKind.MoreWanted, BatchEventKind.Closed, .. s_afterClosing];

    private readonly List<Problem> _problems = [];

    public IReadOnlyList<Problem> Problems => _problems;

    /// <summary>The event; null when there are problems.</summary>
    public BatchEvent? Read(DateTimeOffset nowUtc)
    {
        bool isOwn =
            NameKey.Same(machineName, run.Status.Batch.Machine)
            || run.History.OnSpindles.Any(coil => NameKey.Same(coil.Machine, machineName));
        if (run.Status.Closing is { } closing && !s_afterClosing.Contains(said.Kind))
        {
            _problems.Add(BatchNumber.IsClosed("batch", run.Status.Batch, closing));
            return null;
        }

        bool ofWinder = !s_ofBatch.Contains(said.Kind);
        if (ofWinder && !isOwn && known.WinderProblem(machineName) is { } unknown)
        {
            _problems.Add(unknown);
        }

        BatchEvent made = BatchEventMaker.Of(said, known.SpoolOf(said.Spool), nowUtc) with { Person = said.Person.Trim() };
        BatchEvent one = made is WinderEvent winder ? winder with { Machine = machineName, Note = said.Note.Trim() } : made;
        BatchEvent read = one switch
        {
            Begun begun => Begin(begun),
            Released released => Release(released),
            SpoolTaken taken => Spool(taken),
            MoreWanted more => More(more),
            SignalAnswered answer => Answer(answer),
            CauseFound found => Found(found),
            Closed closed => Close(closed),
            SpindleEvent happened => OfCoil(happened),
            _ => throw new InvalidOperationException($"Nothing reads {one.Kind}."),
        };
        return _problems.Count == 0 ? read : null;
    }

    private Begun Begin(Begun one)
    {
        string tag = said.Tag.Trim().Length > 0 ? BatchTags.Tidy(run.Status.Batch, said.Tag) : run.NextToBegin ?? "";
        if (tag.Length == 0)
        {
            _problems.Add(new Problem("tag", "every coil of this batch is wound or on a spindle"));
        }

        if (run.History.OnSpindles.FirstOrDefault(coil => coil.Tag == tag) is { } there)
        {
            _problems.Add(new Problem("tag", $"{tag} is on {there.Machine} already"));
        }

        int spindles = machine?.Spindles ?? 1,
            busy = run.History.OnSpindles.Count(coil => string.Equals(coil.Machine, machineName, StringComparison.OrdinalIgnoreCase));
        if (busy >= spindles)
        {
            string on = string.Join(
                ", ",
                run.History.OnSpindles.Where(coil => string.Equals(coil.Machine, machineName, StringComparison.OrdinalIgnoreCase))
                    .Select(coil => coil.Tag)
            );
            _problems.Add(
                new Problem(
                    "machine",
                    $"{(machineName.Length > 0 ? machineName : "this winder")} still holds {on}: enter its reading, or scrap it",
                    null,
                    string.Create(CultureInfo.InvariantCulture, $"{spindles} at once")
                )
            );
        }

        bool firstIsUnderWay = run.Status.Coils.Any(coil => coil.Tag != tag) || run.History.OnSpindles.Count > 0;
        if (run.History.Release is null && firstIsUnderWay)
        {
            _problems.Add(new Problem("batch", "the series waits for its first piece: check it and release the series first"));
        }

        return one with
        {
            Tag = tag,
        };
    }

    private Released Release(Released one)
    {
        if (run.FirstPiece is not { } first)
        {
            _problems.Add(new Problem("batch", "no coil has been read yet: the first piece releases the series"));
        }
        else if (first.Verdict.Kind != VerdictKind.Pass && one.Note.Length == 0)
        {
            _problems.Add(
                new Problem(
                    "note",
                    $"{first.Tag} is on {first.Verdict.Kind.ToString().ToLowerInvariant()}: say why the series may go on",
                    null,
                    "a few words"
                )
            );
        }

        return one with
        {
            Tag = run.FirstPiece?.Tag ?? "",
        };
    }

    private MoreWanted More(MoreWanted one)
    {
        int room = Math.Max(1, BatchRules.MostCoils - run.Status.Wanted);
        double? count = Count(said.Counter, "counter", 1, room);
        if (count is { } coils && coils != Math.Round(coils))
        {
            _problems.Add(
                new Problem("counter", "coils are whole", said.Counter, string.Create(CultureInfo.InvariantCulture, $"1 to {room:#,##0}"))
            );
        }

        if (one.Why.Length == 0)
        {
            _problems.Add(new Problem("note", "why are more wanted?", null, "a few words"));
        }

        return one with
        {
            Coils = (int)(count ?? 0),
        };
    }

    private Closed Close(Closed one)
    {
        if (run.Status.IsDone)
        {
            _problems.Add(new Problem("batch", $"{run.Status.CountWords}: there is nothing to close"));
        }

        if (run.History.OnSpindles is [_, ..] on)
        {
            string tags = string.Join(", ", on.Select(coil => coil.Tag));
            _problems.Add(new Problem("batch", $"{tags} on a spindle: enter the reading, or scrap it, before the batch is closed"));
        }

        if (one.Why.Length == 0)
        {
            _problems.Add(new Problem("note", "why does it end here?", null, "a few words"));
        }

        return one with
        {
            Coils = run.Status.Coils.Count - run.Status.Beyond.Count,
            Wanted = run.Status.Wanted,
        };
    }

    private SignalAnswered Answer(SignalAnswered one)
    {
        if (run.OpenSignals is not [.., var newest])
        {
            _problems.Add(new Problem("batch", "no signal of this batch waits for an answer"));
            return one;
        }

        if (one.Found.Length == 0)
        {
            _problems.Add(new Problem("note", "what was found?", null, "a few words"));
        }

        return one with
        {
            Tag = newest.Tag,
        };
    }

    private CauseFound Found(CauseFound one)
    {
        string tag = BatchTags.Tidy(run.Status.Batch, said.Tag);
        if (!run.Status.Coils.Any(coil => coil.Tag == tag))
        {
            _problems.Add(new Problem("tag", "no such coil of this batch was read", said.Tag));
        }

        if (one.Cause.Length == 0)
        {
            _problems.Add(new Problem("choice", "what did it really have?", said.Choice, CauseNames.Allowed));
        }

        return one with
        {
            Tag = tag,
        };
    }

    private SpoolTaken Spool(SpoolTaken one)
    {
        if (said.Spool.Trim().Length == 0)
        {
            _problems.Add(new Problem("spool", "which spool is on?", null, "its label"));
        }
        else if (!NameKey.Same(said.Spool, run.History.Spool) && known.SpoolProblem(said.Spool) is { } unknown)
        {
            _problems.Add(unknown);
        }

        if (said.Choice is not ("hold-turns" or "hold-ohms"))
        {
            _problems.Add(new Problem("choice", "say what stays the same", said.Choice, "hold-turns, hold-ohms"));
        }

        double? turns = said.Choice == "hold-ohms" ? Count(said.Turns, "turns", 1, 100_000) : null;
        return one with { Turns = turns };
    }

    private SpindleEvent OfCoil(SpindleEvent one)
    {
        string typed = said.Tag.Trim().Length > 0 ? BatchTags.Tidy(run.Status.Batch, said.Tag) : "";
        CoilOnSpindle[] fitting =
        [
            .. run.History.OnSpindles.Where(coil =>
                typed.Length > 0
                    ? coil.Tag == typed
                    : said.Machine.Length == 0 || string.Equals(coil.Machine, machineName, StringComparison.OrdinalIgnoreCase)
            ),
        ];
        if (fitting.Length != 1)
        {
            _problems.Add(
                new Problem(
                    "tag",
                    fitting.Length == 0 ? "no such coil is on a spindle" : "several coils are on spindles: which one?",
                    typed,
                    string.Join(", ", run.History.OnSpindles.Select(coil => coil.Tag))
                )
            );
            return one;
        }

        CoilOnSpindle on = fitting[0];
        bool stops = one is Paused or Broken,
            running = on.State == SpindleState.Winding;
        if (stops && on.State == SpindleState.Ended)
        {
            _problems.Add(new Problem("tag", $"{on.Tag} was ended already; enter its reading"));
        }

        if ((one is Spliced && on.State != SpindleState.Broken) || (one is Resumed or FinishedLow && running))
        {
            _problems.Add(
                new Problem("tag", one is Spliced ? $"{on.Tag} is not broken" : $"{on.Tag} is running: stop it and note the counter first")
            );
        }

        double? counter = stops || said.Counter.Trim().Length > 0 ? Count(said.Counter, "counter", 0, 1e6) : null;
        double? turns = counter * (machine?.Counter?.Correction.Value ?? 1);
        if (turns > run.WantedTurns * 1.05)
        {
            _problems.Add(
                new Problem(
                    "counter",
                    "more turns than the coil gets: look at the counter again",
                    said.Counter,
                    string.Create(CultureInfo.InvariantCulture, $"0 to {run.WantedTurns / (machine?.Counter?.Correction.Value ?? 1):0}")
                )
            );
        }

        return one with
        {
            Tag = on.Tag,
            Counter = counter,
            Turns = turns ?? on.Turns,
            Machine = on.Machine,
        };
    }

    private double? Count(string typed, string field, double low, double high)
    {
        if (
            QuantityParser.TryParse(typed, QuantityKind.Turns, unitRequired: false, out Entered entered, out string why)
            && entered.Si >= low
            && entered.Si <= high
        )
        {
            return entered.Si;
        }

        _problems.Add(
            new Problem(
                field,
                why.Length > 0 ? why : "outside what is possible here",
                typed,
                string.Create(CultureInfo.InvariantCulture, $"{low:#,##0} to {high:#,##0}")
            )
        );
        return null;
    }
}
