using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Pieces;
using Coilwright.Workshop.Pieces.Events;
using Coilwright.Workshop.Readings;
using Coilwright.Workshop.Rules;
using Coilwright.Workshop.Steps;

namespace Coilwright.Workshop.Magnets;

/// <summary>
/// Magnets charged or knocked down outside their step: after a rewind, a repair or a return, or where the charge was never said. Each is a
/// new record; the last one holds.
/// </summary>
public sealed class MagnetChargeService(IShopRecords records, PieceService shelf)
{
    private const int LongestWords = 200;

    /// <summary>Records a charge on pieces, or gives every problem and keeps nothing.</summary>
    /// <param name="id">Client-made id; sent twice it is kept once.</param>
    /// <param name="serials">Pieces.</param>
    /// <param name="charge">What they were charged to, as typed.</param>
    /// <param name="why">Why it was done; may stay empty.</param>
    /// <param name="person">Who did it.</param>
    /// <param name="cancel">Gives up.</param>
    public async Task<IReadOnlyList<Problem>> ChargeAsync(
        Guid id,
        IReadOnlyList<string> serials,
        ChargeEntry charge,
        string why,
        string person,
        CancellationToken cancel
    )
    {
        List<Problem> problems = [];
        DateTimeOffset nowUtc = await shelf.NowUtcAsync(cancel).ConfigureAwait(false);
        ShopRules rules = await shelf.Rules.CurrentAsync(cancel).ConfigureAwait(false);
        MagnetLevel? level = ChargeReader.Read(charge, problems);
        if (charge.IsEmpty)
        {
            problems.Add(new Problem("charge", "charged to what?", null, ChargeReader.Allowed));
        }

        if (why.Trim().Length > LongestWords)
        {
            problems.Add(new Problem("why", "this is too long", null, $"up to {LongestWords} letters"));
        }

        List<PieceSnapshot> charged = [];
        foreach (PieceSnapshot life in await shelf.FindAllAsync(serials, problems, cancel).ConfigureAwait(false))
        {
            if (!life.History.InForce.Any(one => one.Id == ReadingChain.IdWithin(id, life.Piece.Serial)))
            {
                problems.AddRange(Refuse(life, level, rules));
                charged.Add(life);
            }
        }

        if (problems.Count > 0 || level is null)
        {
            return problems;
        }

        await records
            .Pieces.AddEventsAsync(
                [
                    .. charged.Select(life => new MagnetsCharged
                    {
                        Id = ReadingChain.IdWithin(id, life.Piece.Serial),
                        PieceId = life.Piece.Id,
                        Charge = ChargeAsSaid.Of(level, charge),
                        Why = why.Trim(),
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

    private static IEnumerable<Problem> Refuse(PieceSnapshot life, MagnetLevel? level, ShopRules rules)
    {
        if (life.NotHere is { } away)
        {
            yield return away;
        }

        if (!ChargeRule.HasMagnets(life.Recipe))
        {
            yield return new Problem("charge", $"{life.Piece.Serial}: its recipe has no magnets", life.Recipe.Name);
        }

        StepPlan[] steps = [.. life.Plans.Where(plan => plan.ChargesMagnets)];
        if (Array.Find(steps, plan => !life.History.Runs.Any(run => run.Step == plan.Name && run.EndedUtc is not null)) is { } open)
        {
            yield return new Problem(
                "charge",
                $"{life.Piece.Serial}: {open.Name} is not done yet",
                null,
                $"say the charge with {open.Name}"
            );
        }
        else if (
            level is not null
            && ChargeRule.Refuse(life.Piece.Serial, Array.FindLast(steps, plan => plan.Charge is not null)?.Charge, level, rules)
                is { } refused
        )
        {
            yield return refused;
        }
    }
}
