using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Pieces;
using Coilwright.Workshop.Pieces.Events;
using Coilwright.Workshop.Readings;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.Rules;

namespace Coilwright.Workshop.Steps;

/// <summary>Potting in baskets, with the bath's temperature against what the plastics bear.</summary>
public sealed class PottingService(IShopRecords records, PieceService shelf)
{
    public const string Step = "potting";

    internal static readonly Limits Bath = new(QuantityKind.Temperature, 10, 150, "°C", "60 °C");

    /// <summary>Puts pieces into the bath, or gives every problem.</summary>
    /// <param name="entry">As typed.</param>
    /// <param name="cancel">Gives up.</param>
    public async Task<IReadOnlyList<Problem>> InAsync(BasketEntry entry, CancellationToken cancel)
    {
        List<Problem> problems = [];
        DateTimeOffset nowUtc = await shelf.NowUtcAsync(cancel).ConfigureAwait(false);
        ShopRules rules = await shelf.Rules.CurrentAsync(cancel).ConfigureAwait(false);
        if ((await records.Steps.BasketsAsync(50, cancel).ConfigureAwait(false)).Any(there => there.Id == entry.Id))
        {
            return [];
        }

        IReadOnlyList<PieceSnapshot> lives = await shelf.FindAllAsync(entry.Pieces, problems, cancel).ConfigureAwait(false);
        problems.AddRange(lives.SelectMany(life => StepService.MayBegin(life, Step, nowUtc, rules)));
        double? bathC = Read("bath", entry.Bath, problems),
            ownC = entry.Limit.Trim().Length == 0 ? null : Read("limit", entry.Limit, problems);
        (double limitC, string limitOf)? limit = Limit(lives, ownC, rules, problems);
        if (entry.Label.Trim().Length is 0 or > 40)
        {
            problems.Add(new Problem("basket", "a basket needs a name", entry.Label, "1 to 40 letters"));
        }

        string kind = lives.Select(life => life.Recipe.Potting?.Kind ?? "").FirstOrDefault(word => word.Length > 0) ?? "wax";
        TimeSpan least =
            lives.Count == 0
                ? TimeSpan.Zero
                : lives.Max(life => life.Plans.FirstOrDefault(plan => plan.Name == Step)?.Least ?? TimeSpan.Zero);
        PottingBasket basket = new(
            entry.Label.Trim(),
            kind,
            entry.Lot.Trim(),
            [.. lives.Select(life => life.Piece.Serial)],
            nowUtc,
            least,
            limit?.limitC ?? double.NaN,
            limit?.limitOf ?? ""
        );
        problems.AddRange(basket.Check(bathC ?? double.NaN).Where(problem => problem.Field != "pieces" || lives.Count > 0));
        if (problems.Count > 0)
        {
            return problems;
        }

        await records
            .Steps.AddBasketAsync(
                new BasketRecord
                {
                    Id = entry.Id,
                    Label = basket.Label,
                    Kind = kind,
                    Lot = basket.Lot,
                    LeastS = least.TotalSeconds,
                    LimitC = basket.LimitC,
                    LimitOf = basket.LimitOf,
                    Person = entry.Person.Trim(),
                    TimeUtc = nowUtc,
                },
                new BathReadingRecord(
                    ReadingChain.IdWithin(entry.Id, "in"),
                    entry.Id,
                    entry.Bath,
                    bathC!.Value,
                    entry.Person.Trim(),
                    nowUtc
                ),
                [
                    .. lives.Select(life => new StepBegun
                    {
                        Id = ReadingChain.IdWithin(entry.Id, life.Piece.Serial),
                        PieceId = life.Piece.Id,
                        Step = Step,
                        BasketId = entry.Id,
                        Person = entry.Person.Trim(),
                        TimeUtc = nowUtc,
                    }),
                ],
                cancel
            )
            .ConfigureAwait(false);
        return problems;
    }

    /// <summary>Records a reading of the bath. Over the limit every piece in the basket is held for inspection.</summary>
    /// <returns>Problems, or the alarm in words; null when the bath is right.</returns>
    public async Task<(IReadOnlyList<Problem> Problems, string? Alarm)> ReadBathAsync(
        Guid id,
        string label,
        string bath,
        string person,
        CancellationToken cancel
    )
    {
        List<Problem> problems = [];
        double? bathC = Read("bath", bath, problems);
        if (await GoingAsync(label, problems, cancel).ConfigureAwait(false) is not { } going || bathC is not { } celsius)
        {
            return (problems, null);
        }

        DateTimeOffset nowUtc = await shelf.NowUtcAsync(cancel).ConfigureAwait(false);
        Hold? alarm = going.ToBasket().Alarm(celsius, nowUtc);
        Held[] holds = alarm is null
            ? []
            :
            [
                .. going.Pieces.Select(life => new Held
                {
                    Id = ReadingChain.IdWithin(id, life.Piece.Serial),
                    PieceId = life.Piece.Id,
                    Reason = alarm.Reason,
                    Person = person.Trim(),
                    TimeUtc = nowUtc,
                }),
            ];
        await records
            .Steps.AddBathReadingAsync(new BathReadingRecord(id, going.Record.Id, bath, celsius, person.Trim(), nowUtc), holds, cancel)
            .ConfigureAwait(false);
        return ([], alarm?.Reason);
    }

    /// <summary>Takes a basket out, or says why not yet.</summary>
    public async Task<IReadOnlyList<Problem>> OutAsync(Guid id, string label, string person, CancellationToken cancel)
    {
        List<Problem> problems = [];
        if (await GoingAsync(label, problems, cancel).ConfigureAwait(false) is not { } going)
        {
            return problems;
        }

        DateTimeOffset nowUtc = await shelf.NowUtcAsync(cancel).ConfigureAwait(false);
        ShopRules rules = await shelf.Rules.CurrentAsync(cancel).ConfigureAwait(false);
        if (going.ToBasket().MayComeOut(nowUtc, rules.Zone) is { } early)
        {
            return [early];
        }

        await records
            .Pieces.AddEventsAsync(
                [
                    .. going.Pieces.Select(life => new StepEnded
                    {
                        Id = ReadingChain.IdWithin(id, life.Piece.Serial),
                        PieceId = life.Piece.Id,
                        Step = Step,
                        Person = person.Trim(),
                        TimeUtc = nowUtc,
                    }),
                ],
                [],
                cancel
            )
            .ConfigureAwait(false);
        return [];
    }

    /// <summary>Baskets that are in a bath now, with their pieces and readings.</summary>
    public async Task<IReadOnlyList<BasketStatus>> GoingAsync(CancellationToken cancel)
    {
        IReadOnlyList<PieceSnapshot> open = await shelf.OpenAsync(cancel).ConfigureAwait(false);
        ILookup<Guid, PieceSnapshot> inBaskets = open.Where(life => life.History.Runs.Any(run => run is { Step: Step, EndedUtc: null }))
            .Select(life => (life, life.History.InForce.OfType<StepBegun>().Last(one => one.Step == Step).BasketId))
            .Where(pair => pair.BasketId is not null)
            .ToLookup(pair => pair.BasketId!.Value, pair => pair.life);
        List<BasketStatus> going = [];
        foreach (
            BasketRecord basket in (await records.Steps.BasketsAsync(200, cancel).ConfigureAwait(false)).Where(basket =>
                inBaskets.Contains(basket.Id)
            )
        )
        {
            IReadOnlyList<BathReadingRecord> readings = await records.Steps.BathReadingsAsync(basket.Id, cancel).ConfigureAwait(false);
            going.Add(
                new BasketStatus(
                    basket,
                    [.. inBaskets[basket.Id]],
                    readings,
                    await records.Steps.StepUndosAsync([.. readings.Select(reading => reading.Id)], cancel).ConfigureAwait(false)
                )
            );
        }

        return going;
    }

    private async Task<BasketStatus?> GoingAsync(string label, List<Problem> problems, CancellationToken cancel)
    {
        IReadOnlyList<BasketStatus> all = await GoingAsync(cancel).ConfigureAwait(false);
        BasketStatus? found = all.FirstOrDefault(one =>
            string.Equals(one.Record.Label, label.Trim(), StringComparison.OrdinalIgnoreCase) || one.Record.Id.ToString() == label.Trim()
        );
        if (found is null)
        {
            problems.Add(
                new Problem(
                    "basket",
                    "no such basket is in a bath",
                    label,
                    all.Count > 0 ? string.Join(", ", all.Select(one => one.Record.Label)) : "none is"
                )
            );
        }

        return found;
    }

    /// <summary>
    /// The lowest limit of all that is in the basket: of its plastics by the shop's rules, of the recipes, and what was typed.
    /// </summary>
    private static (double LimitC, string LimitOf)? Limit(
        IReadOnlyList<PieceSnapshot> lives,
        double? ownC,
        ShopRules rules,
        List<Problem> problems
    )
    {
        List<(double LimitC, string LimitOf)> limits = ownC is { } typed ? [(typed, "the basket, as typed,")] : [];
        foreach (RecipeCoil coil in lives.SelectMany(life => life.Recipe.Coils))
        {
            if (rules.BathLimitC(coil.Bobbin.Material) is { } limitC)
            {
                limits.Add((limitC, coil.Bobbin.Material));
            }
            else if (ownC is null && lives.All(life => life.Recipe.Potting?.Limit is null))
            {
                string material = coil.Bobbin.Material,
                    bobbin = material.Length > 0 ? KeyLabels.Of(material) : "a bobbin whose material the recipe does not name";
                problems.Add(
                    new Problem(
                        "limit",
                        $"the shop has stated no limit for {bobbin}",
                        null,
                        "type the hottest bath it bears, or state it in the shop's rules (bathLimits)"
                    )
                );
                return null;
            }
        }

        limits.AddRange(
            lives
                .Where(life => life.Recipe.Potting?.Limit is { IsKnown: true })
                .Select(life => (life.Recipe.Potting!.Limit!.Value.Si, $"{life.Recipe.Name}, by its recipe,"))
        );
        return limits.Count == 0 ? null : limits.MinBy(limit => limit.LimitC);
    }

    private static double? Read(string field, string typed, List<Problem> problems)
    {
        if (!QuantityParser.TryParse(typed, Bath, unitRequired: false, out Entered entered, out string why) || !Bath.Allows(entered.Si))
        {
            problems.Add(new Problem(field, why.Length > 0 ? why : Bath.Outside, typed.Length > 0 ? typed : null, Bath.Range));
            return null;
        }

        return entered.Si;
    }
}
