using Coilwright.Analysis.Learning;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Workshop.Learning;

/// <summary>
/// What the shop's readings teach: proposed from all coils, accepted or declined by a person, ended line by line. Nothing that was
/// recorded before changes.
/// </summary>
public sealed class LearningService(IShopRecords records, TimeProvider clock)
{
    /// <summary>Everything on record, and the coils that it can be learnt from.</summary>
    public async Task<LearningStatus> ListAsync(CancellationToken cancel)
    {
        LearningBook book = await BookAsync(cancel).ConfigureAwait(false);
        GatheredCoils coils = await new LearningGather(records).ReadAsync(book, cancel).ConfigureAwait(false);
        return await StatusAsync(book, coils, "", cancel).ConfigureAwait(false);
    }

    /// <summary>Works out what the readings show, and keeps it as a proposal when they show something new.</summary>
    /// <param name="reason">Why now; may stay empty.</param>
    /// <param name="person">Who asks.</param>
    /// <param name="cancel">Gives up.</param>
    public async Task<LearningStatus> ProposeAsync(string reason, string person, CancellationToken cancel)
    {
        LearningBook book = await BookAsync(cancel).ConfigureAwait(false);
        GatheredCoils coils = await new LearningGather(records).ReadAsync(book, cancel).ConfigureAwait(false);
        int number = book.Proposals.Select(one => one.Number).DefaultIfEmpty(0).Max() + 1;
        LearntSet set = LearntSetBuilder.Build(number, coils);
        LearningRecord? last = book.Proposals.LastOrDefault();
        bool known = last is not null && last.Json == (set with { Number = last.Number }).Write();
        if (set.Lines.Count == 0 || known)
        {
            string why = known && book.Waiting is null ? $"nothing was read since set {last!.Number}" : "";
            return await StatusAsync(book, coils, set.Lines.Count == 0 ? LearntSetBuilder.WhyNot(coils) : why, cancel)
                .ConfigureAwait(false);
        }

        LearningRecord proposal = Record(LearningAct.Proposed, number, reason, person) with { Json = set.Write() };
        await records.Learning.AddAsync(proposal, cancel).ConfigureAwait(false); // made at the same time elsewhere: that one is shown
        return await StatusAsync(await BookAsync(cancel).ConfigureAwait(false), coils, "", cancel).ConfigureAwait(false);
    }

    /// <summary>Accepts or declines a proposed set.</summary>
    /// <param name="number">Its number.</param>
    /// <param name="accept">True when it holds for later forecasts.</param>
    /// <param name="reason">Why.</param>
    /// <param name="person">Who.</param>
    /// <param name="cancel">Gives up.</param>
    public async Task<IReadOnlyList<Problem>> DecideAsync(int number, bool accept, string reason, string person, CancellationToken cancel)
    {
        LearningBook book = await BookAsync(cancel).ConfigureAwait(false);
        string field = accept ? "accept" : "decline";
        List<Problem> problems = [.. Reason(reason)];
        int? waiting = book.Waiting?.Number;
        if (book.Proposals.All(one => one.Number != number))
        {
            problems.Add(new Problem(field, $"there is no set {number}", null, Waiting(waiting)));
        }
        else if (book.DecisionOf(number) is { } decided)
        {
            string word = decided.Act == LearningAct.Accepted ? "accepted" : "declined";
            problems.Add(
                new Problem(
                    field,
                    FormattableString.Invariant($"set {number} was {word} on {decided.TimeUtc:yyyy-MM-dd}"),
                    null,
                    Waiting(waiting)
                )
            );
        }
        else if (number != waiting)
        {
            problems.Add(new Problem(field, $"set {number} was replaced by a later proposal", null, Waiting(waiting)));
        }

        if (problems.Count == 0)
        {
            LearningRecord decision = Record(accept ? LearningAct.Accepted : LearningAct.Declined, number, reason, person);
            if (!await records.Learning.AddAsync(decision, cancel).ConfigureAwait(false))
            {
                problems.Add(new Problem(field, $"set {number} was decided meanwhile", null, "look at the list again"));
            }
        }

        return problems;
    }

    /// <summary>Ends a line: what was read of it says nothing of coils that are wound from now on.</summary>
    /// <param name="line">Its short name, or its words.</param>
    /// <param name="reason">Why.</param>
    /// <param name="person">Who.</param>
    /// <param name="cancel">Gives up.</param>
    public async Task<IReadOnlyList<Problem>> CloseAsync(string line, string reason, string person, CancellationToken cancel)
    {
        LearningStatus status = await ListAsync(cancel).ConfigureAwait(false);
        List<Problem> problems = [.. Reason(reason)];
        LineOfCoils? found = status.Lines.FirstOrDefault(one => NameKey.Same(one.Name, line) || NameKey.Same(one.Words, line));
        string names = string.Join(", ", status.Lines.Where(one => one.Ending is null).Select(one => one.Name));
        if (found is null)
        {
            problems.Add(new Problem("close", $"there is no line \"{line}\"", null, names.Length > 0 ? names : "no coil was read yet"));
        }
        else if (found.Ending is { } ending)
        {
            problems.Add(
                new Problem("close", FormattableString.Invariant($"{found.Name} was ended on {ending.TimeUtc:yyyy-MM-dd}"), null, names)
            );
        }

        if (problems.Count == 0)
        {
            LearningBook book = await BookAsync(cancel).ConfigureAwait(false);
            LearningRecord closing = Record(LearningAct.Closed, book.Endings.Count() + 1, reason, person) with
            {
                Line = LearningBook.KeyOf(found!.Effect.Kind, CoilKeys.FromLine(found.Effect.Name).Name),
            };
            if (!await records.Learning.AddAsync(closing, cancel).ConfigureAwait(false))
            {
                problems.Add(new Problem("close", "another line was ended at the same moment", null, "try again"));
            }
        }

        return problems;
    }

    private static IEnumerable<Problem> Reason(string reason) =>
        string.IsNullOrWhiteSpace(reason) ? [new Problem("reason", "say why: it is kept with the record", null, "a few words")] : [];

    private static string Waiting(int? number) =>
        number is { } waits ? FormattableString.Invariant($"{waits}") : "nothing waits for a decision";

    private LearningRecord Record(LearningAct act, int number, string reason, string person) =>
        new()
        {
            Id = Guid.NewGuid(),
            Act = act,
            Number = number,
            Reason = reason.Trim(),
            Person = person.Trim(),
            Program = ProgramVersion.Text,
            TimeUtc = clock.GetUtcNow(),
        };

    private async Task<LearningBook> BookAsync(CancellationToken cancel) =>
        new(await records.Learning.AllAsync(cancel).ConfigureAwait(false));

    private async Task<LearningStatus> StatusAsync(LearningBook book, GatheredCoils coils, string whyNot, CancellationToken cancel)
    {
        DateTimeOffset nowUtc = clock.GetUtcNow();
        SetStatus[] sets = [.. book.Proposals.Select(one => StatusOf(book, one, nowUtc))];
        SetStatus? waiting = book.Waiting is { } waits ? sets.First(one => one.Set.Number == waits.Number) : null;
        return new LearningStatus
        {
            Sets = sets,
            Waiting = waiting,
            Moves = waiting is null
                ? []
                : await new LearningMoves(records).ReadAsync(book, waiting.Set, nowUtc, cancel).ConfigureAwait(false),
            Hindsight = waiting is null ? null : await HindsightAsync(book, waiting.Set, coils, nowUtc, cancel).ConfigureAwait(false),
            WhyNot = waiting is null ? whyNot : "",
            Lines = [.. coils.Lines.Select(line => line with { Ending = EndingOf(book, line.Effect) })],
            OhmCoils = coils.Resistance.Count,
            HenryCoils = coils.Inductance.Count,
            WithoutTemperature = coils.WithoutTemperature,
            Unreadable = coils.Unreadable,
        };
    }

    private async Task<LearningHindsight> HindsightAsync(
        LearningBook book,
        LearntSet set,
        GatheredCoils coils,
        DateTimeOffset nowUtc,
        CancellationToken cancel
    )
    {
        KnownParts plain = await KnownParts.ReadAsync(records.Recipes, records.Rules, cancel).ConfigureAwait(false);
        return await LearningHindsight
            .CountAsync(records, coils.Read, spool => plain.With(new RecipeLearning(set, book, nowUtc, spool)), cancel)
            .ConfigureAwait(false);
    }

    private static LearningRecord? EndingOf(LearningBook book, Effect effect)
    {
        (string name, int endings) = CoilKeys.FromLine(effect.Name);
        return book.Endings.Where(one => one.Line == LearningBook.KeyOf(effect.Kind, name)).ElementAtOrDefault(endings);
    }

    private static SetStatus StatusOf(LearningBook book, LearningRecord proposal, DateTimeOffset nowUtc)
    {
        LearningRecord? decision = book.DecisionOf(proposal.Number);
        string undecided = book.Waiting?.Number == proposal.Number ? "proposed" : "replaced",
            accepted = book.At(nowUtc)?.Number == proposal.Number ? "in force" : "accepted";
        string state = decision?.Act switch
        {
            null => undecided,
            LearningAct.Accepted => accepted,
            _ => "declined",
        };
        return new SetStatus(LearntSet.Read(proposal, (decision ?? proposal).TimeUtc), state, proposal, decision);
    }
}
