using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Pieces;
using Coilwright.Workshop.Pieces.Events;
using Coilwright.Workshop.Readings;

namespace Coilwright.Workshop.Sets;

/// <summary>Pieces matched to sets: proposed, joined, left. A piece stands in one set at a time.</summary>
public sealed class SetService(IPieceRecords records, PieceService shelf, OutputService outputs)
{
    private const int LongestName = 60,
        LongestWords = 200;

    /// <summary>Levels nearer than this are the same to two decimals of a decibel.</summary>
    private const double SameDb = 0.005;

    /// <summary>The closest sets of the pieces at hand: in the shop, in no set, neither failed nor held by a person or an alarm.</summary>
    public async Task<SetProposal> ProposeAsync(IReadOnlyList<SetPlace> places, CancellationToken cancel)
    {
        List<Problem> problems = [];
        IReadOnlyList<double> offsets = SetPlaceReader.Offsets(places, problems);
        IReadOnlyList<PieceSnapshot> open = await shelf.OpenAsync(cancel).ConfigureAwait(false);
        DateTimeOffset nowUtc = await shelf.NowUtcAsync(cancel).ConfigureAwait(false);
        PieceSnapshot[] free =
        [
            .. open.Where(life =>
                SetMembership.Of(life) is null
                && life.History.Test is not { Passed: false }
                && !life.History.Holds.Any(hold => hold.Runs(nowUtc))
            ),
        ];
        PieceSnapshot[][] found = [.. places.Select(place => AtPlace(place, free, open, problems))];
        if (problems.Count > 0)
        {
            return new SetProposal(problems, [], []);
        }

        PieceSnapshot[] all = [.. found.SelectMany(place => place).DistinctBy(life => life.Piece.Id)];
        Dictionary<Guid, SetPiece> pieces = (await outputs.OfAsync(all, cancel).ConfigureAwait(false)).ToDictionary(piece =>
            piece.Snapshot.Piece.Id
        );
        IReadOnlyList<SetChoice> choices = SetFinder.Best(
            [.. places.Zip(offsets, (place, offset) => (place.Name.Trim(), offset))],
            [.. found.Select(place => (IReadOnlyList<SetPiece>)[.. place.Select(life => pieces[life.Piece.Id])])]
        );
        return new SetProposal(
            [],
            choices,
            choices.Count == 0 ? all : [.. all.Where(life => choices[0].Pieces.All(piece => piece.Snapshot.Piece.Id != life.Piece.Id))]
        );
    }

    /// <summary>Makes a set of pieces, or gives every problem and keeps nothing.</summary>
    public async Task<(IReadOnlyList<Problem> Problems, SetChoice? Choice)> JoinAsync(SetEntry entry, CancellationToken cancel)
    {
        List<Problem> problems = [];
        IReadOnlyList<double> offsets = SetPlaceReader.Offsets(entry.Places, problems);
        IReadOnlyList<PieceSnapshot> found = await shelf
            .FindAllAsync([.. entry.Places.Select(place => place.Of)], problems, cancel)
            .ConfigureAwait(false);
        PieceSnapshot[] lives =
            problems.Count > 0
                ? [.. found]
                :
                [
                    .. entry.Places.Select(place =>
                        found.First(life =>
                            string.Equals(life.Piece.Serial, place.Of.Trim(), StringComparison.OrdinalIgnoreCase)
                            || life.Piece.Id.ToString() == place.Of.Trim()
                        )
                    ),
                ];
        bool sentTwice = problems.Count == 0 && lives.All(life => SetMembership.Of(life)?.SetId == entry.Id);
        if (!sentTwice)
        {
            problems.AddRange(lives.SelectMany(Refuse));
            await CheckNameAsync(entry, problems, cancel).ConfigureAwait(false);
        }

        if (problems.Count > 0)
        {
            return (problems, null);
        }

        SetChoice choice = new(
            [.. entry.Places.Zip(offsets, (place, offset) => (place.Name.Trim(), offset))],
            await outputs.OfAsync(lives, cancel).ConfigureAwait(false)
        );
        problems.AddRange(
            sentTwice || entry.Why.Trim().Length > 0 ? [] : await NeedReasonAsync(entry, choice, cancel).ConfigureAwait(false)
        );
        if (problems.Count == 0 && await KeepAsync(entry, choice, cancel).ConfigureAwait(false) is { } taken)
        {
            PieceSnapshot other = lives.First(life => life.Piece.Id == taken);
            problems.Add(
                new Problem("places", $"{other.Piece.Serial} was put into another set meanwhile", other.Piece.Serial, "choose again")
            );
        }

        return (problems, problems.Count == 0 ? choice : null);
    }

    /// <summary>Takes pieces out of their sets, with a reason; a set of which one piece is left is no set any more.</summary>
    public async Task<IReadOnlyList<Problem>> LeaveAsync(
        Guid id,
        IReadOnlyList<string> serials,
        string reason,
        string person,
        CancellationToken cancel
    )
    {
        List<Problem> problems = [];
        DateTimeOffset nowUtc = await shelf.NowUtcAsync(cancel).ConfigureAwait(false);
        if (reason.Trim().Length is 0 or > LongestWords)
        {
            problems.Add(new Problem("reason", "a set is broken with a reason", null, "a few words"));
        }

        List<PieceEvent> events = [];
        IReadOnlyList<PieceSnapshot> leaving = await shelf.FindAllAsync(serials, problems, cancel).ConfigureAwait(false);
        foreach (
            PieceSnapshot life in leaving.Where(life =>
                !life.History.InForce.Any(one => one.Id == ReadingChain.IdWithin(id, life.Piece.Serial))
            )
        )
        {
            if (SetMembership.Of(life) is not { } place)
            {
                problems.Add(new Problem("pieces", $"{life.Piece.Serial} stands in no set", life.Piece.Serial));
                continue;
            }

            IReadOnlyList<PieceSnapshot> set = await MembersAsync(place.SetId, cancel).ConfigureAwait(false);
            bool ends = set.Count(one => leaving.All(other => other.Piece.Id != one.Piece.Id)) < 2;
            events.AddRange(
                set.Where(one => ends || one.Piece.Id == life.Piece.Id)
                    .Select(one => new LeftSet
                    {
                        Id = ReadingChain.IdWithin(id, one.Piece.Serial),
                        PieceId = one.Piece.Id,
                        SetId = place.SetId,
                        Name = place.Name,
                        Reason = reason.Trim(),
                        Person = person.Trim(),
                        TimeUtc = nowUtc,
                    })
            );
        }

        if (problems.Count == 0)
        {
            await records.AddEventsAsync([.. events.DistinctBy(one => one.Id)], [], cancel).ConfigureAwait(false);
        }

        return problems;
    }

    /// <summary>The sets of which a piece is in the shop, whole.</summary>
    public async Task<SetsInShop> InShopAsync(CancellationToken cancel)
    {
        IReadOnlyList<RecordStatus<PieceSnapshot>> open = await shelf.OpenStatusesAsync(cancel).ConfigureAwait(false);
        List<PieceSet> sets = [];
        List<UnreadableRecord> unreadable = [.. open.Unreadable()];
        foreach (PieceSet part in PieceSet.Among(open.Readable()))
        {
            IReadOnlyList<RecordStatus<PieceSnapshot>> members = await EverMembersAsync(part.Id, cancel).ConfigureAwait(false);
            sets.AddRange(PieceSet.Among(members.Readable()).Where(set => set.Id == part.Id));
            unreadable.AddRange(members.Unreadable());
        }

        return new SetsInShop(sets, [.. unreadable.Distinct()]);
    }

    /// <summary>A set by its name, without regard to case; null when no piece stands in one of that name.</summary>
    public async Task<PieceSet?> FindAsync(string name, CancellationToken cancel) =>
        PieceSet
            .Among(
                await shelf
                    .LivesAsync(await records.WithAsync(new PieceQuery(SetName: name.Trim()), cancel).ConfigureAwait(false), cancel)
                    .ConfigureAwait(false)
            )
            .LastOrDefault(set => string.Equals(set.Name, name.Trim(), StringComparison.OrdinalIgnoreCase));

    /// <summary>A set as a choice, with its levels, phase and reasons of today.</summary>
    public async Task<SetChoice> ChoiceAsync(PieceSet set, CancellationToken cancel) =>
        new(
            [.. set.Members.Select(one => (one.Place.Place, one.Place.OffsetDb))],
            await outputs.OfAsync([.. set.Members.Select(one => one.Snapshot)], cancel).ConfigureAwait(false)
        );

    private async Task<IReadOnlyList<PieceSnapshot>> MembersAsync(Guid setId, CancellationToken cancel) =>
        [
            .. (
                await shelf
                    .LivesAsync(await records.WithAsync(new PieceQuery(SetId: setId), cancel).ConfigureAwait(false), cancel)
                    .ConfigureAwait(false)
            ).Where(life => SetMembership.Of(life)?.SetId == setId),
        ];

    /// <summary>Pieces that ever stood in a set, each or why it cannot be shown.</summary>
    private async Task<IReadOnlyList<RecordStatus<PieceSnapshot>>> EverMembersAsync(Guid setId, CancellationToken cancel) =>
        await shelf
            .StatusesAsync(await records.WithAsync(new PieceQuery(SetId: setId), cancel).ConfigureAwait(false), cancel)
            .ConfigureAwait(false);

    private static IEnumerable<Problem> Refuse(PieceSnapshot life)
    {
        if (life.NotHere is { } away)
        {
            yield return away;
        }

        if (SetMembership.Of(life) is { } stands)
        {
            yield return new Problem(
                "places",
                $"{life.Piece.Serial} stands in {stands.Words} already",
                life.Piece.Serial,
                "a piece that stands in no set, or take it out there first"
            );
        }

        if (life.History.Test is { Passed: false })
        {
            yield return new Problem(
                "places",
                $"{life.Piece.Serial} did not pass its final test",
                life.Piece.Serial,
                "mend it and test it again"
            );
        }
    }

    private static PieceSnapshot[] AtPlace(SetPlace place, PieceSnapshot[] free, IReadOnlyList<PieceSnapshot> open, List<Problem> problems)
    {
        string of = place.Of.Trim();
        if (open.FirstOrDefault(life => string.Equals(life.Piece.Serial, of, StringComparison.OrdinalIgnoreCase)) is { } named)
        {
            problems.AddRange(Refuse(named));
            return [named];
        }

        PieceSnapshot[] fitting = [.. free.Where(life => string.Equals(life.Recipe.Name, of, StringComparison.OrdinalIgnoreCase))];
        if (fitting.Length == 0 && of.Length > 0)
        {
            problems.Add(
                new Problem(
                    "places",
                    $"no piece at hand for {place.Name}",
                    of,
                    string.Join(", ", free.Select(life => life.Recipe.Name).Distinct(StringComparer.OrdinalIgnoreCase))
                        is { Length: > 0 } names
                        ? $"a recipe with pieces in no set ({names}), or a serial"
                        : "put pieces together first"
                )
            );
        }

        return fitting;
    }

    private async Task CheckNameAsync(SetEntry entry, List<Problem> problems, CancellationToken cancel)
    {
        string name = entry.Name.Trim();
        if (name.Length is 0 or > LongestName || name.Any(char.IsControl))
        {
            problems.Add(new Problem("name", "what is the set called?", name.Length == 0 ? null : name, "up to 60 letters on one line"));
        }
        else if (await FindAsync(name, cancel).ConfigureAwait(false) is not null)
        {
            problems.Add(new Problem("name", "another set has this name", name, "a name of its own"));
        }

        if (entry.Why.Trim().Length > LongestWords)
        {
            problems.Add(new Problem("why", "this is too long", null, "up to 200 letters"));
        }
    }

    /// <summary>What a person must answer for: pieces that work against each other, and a choice that is not the closest.</summary>
    private async Task<IReadOnlyList<Problem>> NeedReasonAsync(SetEntry entry, SetChoice choice, CancellationToken cancel)
    {
        List<Problem> problems = choice.Phase.IsRed
            ? [new Problem("why", choice.Phase.Words, choice.Names, "other pieces, or a reason to go on all the same")]
            : [];
        SetProposal closest = await ProposeAsync(
                [.. entry.Places.Select((place, at) => place with { Of = choice.Pieces[at].Snapshot.Recipe.Name })],
                cancel
            )
            .ConfigureAwait(false);
        if (closest.Choices is [var best, ..] && best.ApartDb < choice.ApartDb - SameDb)
        {
            problems.Add(
                new Problem(
                    "why",
                    $"closer ones are at hand: {best.Names}, {best.ApartWords} apart against {choice.ApartWords}",
                    choice.Names,
                    "take those, or say why not"
                )
            );
        }

        return problems;
    }

    private async Task<Guid?> KeepAsync(SetEntry entry, SetChoice choice, CancellationToken cancel)
    {
        DateTimeOffset nowUtc = await shelf.NowUtcAsync(cancel).ConfigureAwait(false);
        JoinedSet[] joined =
        [
            .. choice.Pieces.Select(
                (one, at) =>
                    new JoinedSet
                    {
                        Id = ReadingChain.IdWithin(entry.Id, one.Snapshot.Piece.Serial),
                        PieceId = one.Snapshot.Piece.Id,
                        SetId = entry.Id,
                        Name = entry.Name.Trim(),
                        Place = choice.Places[at].Name,
                        OffsetDb = choice.Places[at].OffsetDb,
                        OffsetTyped = entry.Places[at].Offset.Trim(),
                        Why = entry.Why.Trim().ReplaceLineEndings(" "),
                        Person = entry.Person.Trim(),
                        TimeUtc = nowUtc,
                    }
            ),
        ];
        return await records.JoinSetAsync(joined, cancel).ConfigureAwait(false);
    }
}
