using System.Globalization;
using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Pieces.Events;
using Coilwright.Workshop.Polarity;
using Coilwright.Workshop.Readings;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.Rules;

namespace Coilwright.Workshop.Pieces;

/// <summary>Where coils become pieces: a serial is given, and every coil stands in one piece only.</summary>
public sealed class AssemblyService(IPieceRecords records, PieceService shelf, CoilService store)
{
    private const int LongestSerial = 40,
        LongestWords = 200;

    /// <summary>Puts a piece together, or gives every problem and keeps nothing.</summary>
    /// <returns>The problems, or the piece.</returns>
    public async Task<(IReadOnlyList<Problem> Problems, PieceRecord? Piece)> MakeAsync(AssemblyEntry entry, CancellationToken cancel)
    {
        if (await records.FindAsync([entry.Id.ToString()], cancel).ConfigureAwait(false) is [var there, ..])
        {
            return ([], there);
        }

        List<Problem> problems = [];
        IReadOnlyList<CoilAtHand> coils = await CoilsAsync(entry.Coils, problems, cancel).ConfigureAwait(false);
        if (coils.Count == 0)
        {
            return (problems, null);
        }

        (RevisionRecord revision, Recipe recipe) = await NewestOfAsync(coils, cancel).ConfigureAwait(false);
        IReadOnlyList<CoilAtHand> placed = Placed(recipe, coils, problems);
        CheckWords(entry, recipe, problems);
        DateTimeOffset nowUtc = await shelf.NowUtcAsync(cancel).ConfigureAwait(false);
        PieceRecord piece = new()
        {
            Id = entry.Id,
            Serial = entry.Serial.Trim() is { Length: > 0 } typed
                ? typed
                : await NextSerialAsync(recipe, nowUtc, cancel).ConfigureAwait(false),
            RecipeId = revision.RecipeId,
            RevisionNumber = revision.Number,
            Options = string.Join('\n', Lines(entry.Options)),
            Overruled = entry.Overruled.Trim(),
            Person = entry.Person.Trim(),
            TimeUtc = nowUtc,
        };
        if (
            problems.Count == 0
            && await records.AddAsync(piece, [.. Parts(piece, placed, entry)], cancel).ConfigureAwait(false) is { } taken
        )
        {
            problems.Add(await TakenAsync(taken, piece, cancel).ConfigureAwait(false));
        }

        return problems.Count > 0 ? (problems, null) : (problems, piece);
    }

    /// <summary>Puts another coil in the place of one that was taken out.</summary>
    public async Task<IReadOnlyList<Problem>> ReplaceCoilAsync(
        Guid id,
        string serial,
        string oldTag,
        string newCode,
        string reason,
        string person,
        CancellationToken cancel
    )
    {
        List<Problem> problems = [];
        PieceSnapshot? life = await shelf.FindOneAsync(serial, problems, cancel).ConfigureAwait(false);
        CoilAtHand? coil = await store.FindAsync(newCode, cancel).ConfigureAwait(false);
        PiecePartRecord? old = life?.PartsIn.FirstOrDefault(part =>
            part.Kind == PartKind.Coil && oldTag.Trim().EndsWith(part.Tag, StringComparison.OrdinalIgnoreCase)
        );
        if (life?.NotHere is { } away)
        {
            problems.Add(away);
        }

        if (life is not null && old is null)
        {
            problems.Add(
                new Problem(
                    "old",
                    "no such coil stands in this piece",
                    oldTag,
                    string.Join(", ", life.PartsIn.Where(part => part.Kind == PartKind.Coil).Select(part => part.Tag))
                )
            );
        }

        if (coil is null || (old is not null && coil.Batch.CoilName != old.Place))
        {
            problems.Add(
                new Problem(
                    "new",
                    coil is null ? "there is no such coil, or it was not read" : $"this is a {coil.Batch.CoilName}, not a {old!.Place}",
                    newCode,
                    "batch/tag of a wound coil"
                )
            );
        }

        if (string.IsNullOrWhiteSpace(reason))
        {
            problems.Add(new Problem("reason", "taking a coil out needs a reason", null, "a few words"));
        }

        if (problems.Count > 0)
        {
            return problems;
        }

        DateTimeOffset nowUtc = await shelf.NowUtcAsync(cancel).ConfigureAwait(false);
        PiecePartRecord part = new()
        {
            Id = id,
            PieceId = life!.Piece.Id,
            Kind = PartKind.Coil,
            Place = old!.Place,
            BatchId = coil!.Batch.Id,
            Tag = coil.Coil.Tag,
            TimeUtc = nowUtc,
        };
        PartOut gone = new()
        {
            Id = ReadingChain.IdWithin(id, "out"),
            PieceId = life.Piece.Id,
            PartId = old.Id,
            OutTag = old.Tag,
            InTag = part.Tag,
            Reason = reason.Trim(),
            Person = person.Trim(),
            TimeUtc = nowUtc,
        };
        return await records.ExchangePartsAsync([gone], [part], cancel).ConfigureAwait(false) is { } taken
            ? [await TakenAsync(taken, life.Piece, cancel).ConfigureAwait(false)]
            : [];
    }

    /// <summary>The next serial of the shop's pattern.</summary>
    public async Task<string> NextSerialAsync(Recipe recipe, DateTimeOffset nowUtc, CancellationToken cancel)
    {
        ShopRules rules = await shelf.Rules.CurrentAsync(cancel).ConfigureAwait(false);
        DateOnly day = DateOnly.FromDateTime(TimeZoneInfo.ConvertTime(nowUtc, rules.Zone).DateTime);
        string name = ShortName(recipe.Name),
            first = rules.Serials.Make(1, day, name),
            other = rules.Serials.Make(2, day, name);
        int same = first.Zip(other).TakeWhile(pair => pair.First == pair.Second).Count();
        HashSet<string> taken = new(
            await records.SerialsLikeAsync(first[..same].TrimEnd('0'), cancel).ConfigureAwait(false),
            StringComparer.OrdinalIgnoreCase
        );
        int number = 1;
        while (taken.Contains(rules.Serials.Make(number, day, name)))
        {
            number++;
        }

        return rules.Serials.Make(number, day, name);
    }

    private static string ShortName(string recipe) => new([.. recipe.Where(char.IsAsciiLetterOrDigit).Take(8)]);

    private async Task<IReadOnlyList<CoilAtHand>> CoilsAsync(IReadOnlyList<string> codes, List<Problem> problems, CancellationToken cancel)
    {
        List<CoilAtHand> coils = [];
        foreach (string code in codes.Select(code => code.Trim()).Where(code => code.Length > 0))
        {
            if (await store.FindAsync(code, cancel).ConfigureAwait(false) is not { } coil)
            {
                problems.Add(new Problem("coils", "there is no such coil, or it was not read", code, "batch/tag, for example H-12/C-014"));
                continue;
            }

            if (coils.Any(other => other.Code == coil.Code))
            {
                problems.Add(new Problem("coils", "this coil is named twice", coil.Code));
            }

            if (coil.Coil.Verdict.Kind == VerdictKind.Reject)
            {
                problems.Add(
                    new Problem(
                        "coils",
                        $"{coil.Code} is rejected: {string.Join("; ", coil.Coil.Verdict.Reasons.Take(1))}",
                        coil.Code,
                        "a coil that passes, or read it again"
                    )
                );
            }

            coils.Add(coil);
        }

        if (coils.Count == 0 && problems.Count == 0)
        {
            problems.Add(new Problem("coils", "no coil was named", null, "batch/tag of each coil"));
        }

        return coils;
    }

    private async Task<(RevisionRecord, Recipe)> NewestOfAsync(IReadOnlyList<CoilAtHand> coils, CancellationToken cancel)
    {
        BatchRecord newest = coils.Select(coil => coil.Batch).OrderByDescending(batch => batch.RevisionNumber).First();
        return await shelf.RecipeAsync(newest.RecipeId, newest.RevisionNumber, cancel).ConfigureAwait(false);
    }

    private static CoilAtHand[] Placed(Recipe recipe, IReadOnlyList<CoilAtHand> coils, List<Problem> problems)
    {
        if (coils.Select(coil => coil.Batch.RecipeId).Distinct().Count() > 1)
        {
            problems.Add(
                new Problem(
                    "coils",
                    "these coils are of more than one recipe",
                    string.Join(", ", coils.Select(coil => coil.Code)),
                    $"coils of {recipe.Name}"
                )
            );
            return [];
        }

        foreach (
            IGrouping<string, CoilAtHand> same in coils
                .GroupBy(coil => coil.Batch.CoilName, StringComparer.Ordinal)
                .Where(same => same.Count() > 1)
        )
        {
            problems.Add(
                new Problem(
                    "coils",
                    $"{same.Count()} coils for one place: {same.Key}",
                    string.Join(", ", same.Select(coil => coil.Code)),
                    "one"
                )
            );
        }

        foreach (RecipeCoil missing in recipe.Coils.Where(place => coils.All(coil => coil.Batch.CoilName != place.Name)))
        {
            problems.Add(new Problem("coils", $"the {missing.Name} coil is missing", null, "batch/tag of a wound coil"));
        }

        return [.. coils];
    }

    private static void CheckWords(AssemblyEntry entry, Recipe recipe, List<Problem> problems)
    {
        if (entry.Serial.Trim().Length > LongestSerial || entry.Serial.Any(letter => letter is < ' ' or > '~'))
        {
            problems.Add(new Problem("serial", "a bar code cannot hold this", entry.Serial, "up to 40 plain letters, digits and signs"));
        }

        problems.AddRange(
            Lines(entry.Options)
                .Concat(Lines(entry.Lots))
                .Where(line => !line.Contains(':', StringComparison.Ordinal) || line.Length > LongestWords)
                .Select(line => new Problem(
                    "options",
                    "a name and a value are needed",
                    line,
                    "name: value, for example cover: nickel silver"
                ))
        );
        if (RecipePhase.Of(recipe) is { IsRed: true } red && string.IsNullOrWhiteSpace(entry.Overruled))
        {
            problems.Add(new Problem("coils", red.Warnings[0].Message, red.Warnings[0].Understood, "give a reason to go on all the same"));
        }
    }

    private static IEnumerable<string> Lines(IReadOnlyList<string> lines) =>
        lines.SelectMany(line => line.Split('\n')).Select(line => line.Trim()).Where(line => line.Length > 0);

    private static IEnumerable<PiecePartRecord> Parts(PieceRecord piece, IReadOnlyList<CoilAtHand> coils, AssemblyEntry entry)
    {
        PiecePartRecord Part(string key, PartKind kind, string place) =>
            new()
            {
                Id = ReadingChain.IdWithin(piece.Id, key),
                PieceId = piece.Id,
                Kind = kind,
                Place = place,
                TimeUtc = piece.TimeUtc,
            };
        foreach (CoilAtHand coil in coils)
        {
            yield return Part("coil " + coil.Batch.CoilName, PartKind.Coil, coil.Batch.CoilName) with
            {
                BatchId = coil.Batch.Id,
                Tag = coil.Coil.Tag,
            };
        }

        if (entry.MagnetLot.Trim() is { Length: > 0 } lot)
        {
            yield return Part("magnets", PartKind.Magnets, "magnets") with
            {
                Lot = lot,
            };
        }

        foreach (string[] pair in Lines(entry.Lots).Select(line => line.Split(':', 2)))
        {
            yield return Part("part " + pair[0].Trim(), PartKind.Other, pair[0].Trim()) with
            {
                Lot = pair[1].Trim(),
            };
        }
    }

    private async Task<Problem> TakenAsync(string taken, PieceRecord piece, CancellationToken cancel)
    {
        if (taken == piece.Serial)
        {
            return new Problem(
                "serial",
                "another piece has this serial already",
                taken,
                "a serial of its own, or leave it empty for the next one"
            );
        }

        IReadOnlyList<PieceRecord> open = await records.WithAsync(new PieceQuery(RecipeId: piece.RecipeId), cancel).ConfigureAwait(false);
        PieceSnapshot? owner = (await shelf.LivesAsync(open, cancel).ConfigureAwait(false)).FirstOrDefault(life =>
            life.PartsIn.Any(part => part.Tag == taken)
        );
        return new Problem(
            "coils",
            string.Create(
                CultureInfo.InvariantCulture,
                $"{taken} stands in {(owner is null ? "another piece" : "piece " + owner.Piece.Serial)} already"
            ),
            taken,
            "a coil that stands in no piece, or take it out there first"
        );
    }
}
