using System.Globalization;
using Coilwright.Workshop.Customers;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Pieces.Events;
using Coilwright.Workshop.Readings;
using Coilwright.Workshop.Rules;
using Coilwright.Workshop.Steps;

namespace Coilwright.Workshop.Pieces;

/// <summary>Pieces leave the shop: tested, with no hold running and the ink hard.</summary>
public sealed class DispatchService(IShopRecords records, PieceService shelf)
{
    /// <summary>Ships pieces to a customer, or gives every problem and ships none.</summary>
    public async Task<IReadOnlyList<Problem>> ShipAsync(
        Guid id,
        IReadOnlyList<string> serials,
        string customer,
        string person,
        CancellationToken cancel
    )
    {
        List<Problem> problems = [];
        DateTimeOffset nowUtc = await shelf.NowUtcAsync(cancel).ConfigureAwait(false);
        ShopRules rules = await shelf.Rules.CurrentAsync(cancel).ConfigureAwait(false);
        IReadOnlyList<PieceSnapshot> lives = await shelf.FindAllAsync(serials, problems, cancel).ConfigureAwait(false);
        if (lives.Count > 0 && lives.All(life => life.History.All.Any(one => one.Id == ReadingChain.IdWithin(id, life.Piece.Serial))))
        {
            return [];
        }

        IReadOnlyList<CustomerRecord> customers = await records.Customers.AllAsync(cancel).ConfigureAwait(false);
        CustomerRecord? to = customers.FirstOrDefault(one =>
            string.Equals(one.Reference, customer.Trim(), StringComparison.OrdinalIgnoreCase)
        );
        if (to is null)
        {
            problems.Add(
                new Problem(
                    "customer",
                    customer.Trim().Length == 0 ? "who does it go to?" : "there is no such customer",
                    customer,
                    customers.Count > 0 ? string.Join(", ", customers.Select(one => one.Reference).Take(20)) : "enter the customer first"
                )
            );
        }

        foreach (PieceSnapshot life in lives)
        {
            problems.AddRange(await MayShipAsync(life, nowUtc, rules, cancel).ConfigureAwait(false));
        }

        if (problems.Count == 0)
        {
            await records
                .Pieces.AddEventsAsync(
                    [
                        .. lives.Select(life => new Shipped
                        {
                            Id = ReadingChain.IdWithin(id, life.Piece.Serial),
                            PieceId = life.Piece.Id,
                            CustomerId = to!.Id,
                            Person = person.Trim(),
                            TimeUtc = nowUtc,
                        }),
                    ],
                    [],
                    cancel
                )
                .ConfigureAwait(false);
        }

        return problems;
    }

    /// <summary>Every reason why a piece may not leave now; empty when it may.</summary>
    public async Task<IReadOnlyList<Problem>> MayShipAsync(
        PieceSnapshot life,
        DateTimeOffset nowUtc,
        ShopRules rules,
        CancellationToken cancel
    )
    {
        if (life.NotHere is { } away)
        {
            return [away];
        }

        List<Problem> problems =
        [
            .. StepRules
                .MayBegin(PieceEventLog.Packing, life.Plans, life.History.Runs, life.History.Holds, nowUtc, rules.Zone)
                .Select(problem => problem with { Message = $"{life.Piece.Serial}: {problem.Message}" }),
        ];
        if (life.History.Test is { Passed: false } failed)
        {
            problems.Add(
                new Problem(
                    "piece",
                    $"{life.Piece.Serial} did not pass its final test: {failed.Result}",
                    life.Piece.Serial,
                    "mend it and test it again"
                )
            );
        }

        if (
            life.History.Test is { } test
            && life.History.InForce.SkipWhile(one => one.Id != test.Id).OfType<MagnetsCharged>().FirstOrDefault() is { } charged
        )
        {
            problems.Add(
                new Problem(
                    "piece",
                    $"{life.Piece.Serial}: its magnets were charged anew after its final test, "
                        + $"{ShopTime.Words(charged.TimeUtc, rules.Zone)}",
                    life.Piece.Serial,
                    "test it again"
                )
            );
        }

        if (
            life.History.Marked is { MixId: { } mixId } marked
            && (await records.Steps.InkMixesAsync(200, cancel).ConfigureAwait(false)).FirstOrDefault(mix => mix.Id == mixId) is { } ink
            && ink.ToMix().Cure(marked.TimeUtc) is { } cure
            && cure.EndUtc > nowUtc
        )
        {
            problems.Add(
                new Problem(
                    "piece",
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"{life.Piece.Serial}: ink of mix {ink.Label} is fully hard on day {cure.DayItIsDone}: "
                            + $"{(cure.EndUtc - cure.BegunUtc).TotalDays:0.0} days at {ink.RoomC:0.#} °C; {cure.Rule.Words}"
                    ),
                    ShopTime.Words(nowUtc, rules.Zone),
                    "pack from " + ShopTime.Words(cure.EndUtc, rules.Zone)
                )
            );
        }

        return problems;
    }
}
