using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Pieces;
using Coilwright.Workshop.Rules;

namespace Coilwright.Workshop.Steps;

/// <summary>Mixes of ink: recorded with the shop's own sheet and the room, so that pot life and cure follow.</summary>
public sealed class InkService(IShopRecords records, PieceService shelf, TimeProvider clock)
{
    internal static readonly Limits Room = new(QuantityKind.Temperature, 0, 50, "°C", "23.5 °C");

    /// <summary>
    /// Records a mix, or gives every problem. Sheet times and rule are the shop's rules'; the room is the one in force unless typed.
    /// </summary>
    public async Task<IReadOnlyList<Problem>> MixAsync(
        Guid id,
        string label,
        string lots,
        string room,
        string person,
        CancellationToken cancel
    )
    {
        List<Problem> problems = [];
        if (label.Trim().Length is 0 or > 40)
        {
            problems.Add(new Problem("mix", "a mix needs a name on its pot", label, "1 to 40 letters"));
        }

        if (lots.Trim().Length is 0 or > 200)
        {
            problems.Add(
                new Problem(
                    "lots",
                    "the lots of the parts are missing: a print could not be traced",
                    null,
                    "the lot of each part, or \"none on the tin\""
                )
            );
        }

        double? roomC = await RoomAsync(room, problems, cancel).ConfigureAwait(false);
        if (problems.Count > 0)
        {
            return problems;
        }

        ShopRules rules = await shelf.Rules.CurrentAsync(cancel).ConfigureAwait(false);
        InkMixRecord mix = new()
        {
            Id = id,
            Label = label.Trim(),
            Lots = lots.Trim(),
            PotLifeS = rules.PotLife.TotalSeconds,
            FullCureS = rules.FullCure.TotalSeconds,
            SheetC = rules.Cure.SheetC,
            DoublesPer10C = rules.Cure.DoublesPer10C,
            RoomC = roomC!.Value,
            Person = person.Trim(),
            TimeUtc = await shelf.NowUtcAsync(cancel).ConfigureAwait(false),
        };
        return await records.Steps.AddInkMixAsync(mix, cancel).ConfigureAwait(false)
            ? []
            :
            [
                new Problem(
                    "mix",
                    "another mix has this name already; one that was taken back keeps its name too",
                    mix.Label,
                    "a name of its own"
                ),
            ];
    }

    /// <summary>Mixes whose pot life or prints may still matter, newest first.</summary>
    public async Task<IReadOnlyList<InkMixRecord>> NewestAsync(CancellationToken cancel) =>
        await records.Steps.InkMixesAsync(20, cancel).ConfigureAwait(false);

    private async Task<double?> RoomAsync(string typed, List<Problem> problems, CancellationToken cancel)
    {
        if (typed.Trim().Length == 0)
        {
            if (await RoomInForce.AtAsync(records, clock.GetUtcNow(), cancel).ConfigureAwait(false) is { } room)
            {
                return room.TemperatureC;
            }

            problems.Add(new Problem("room", "the room's temperature is not known: pot life and cure depend on it", null, Room.Range));
            return null;
        }

        if (!QuantityParser.TryParse(typed, Room, unitRequired: false, out Entered entered, out string why) || !Room.Allows(entered.Si))
        {
            problems.Add(new Problem("room", why.Length > 0 ? why : Room.Outside, typed, Room.Range));
            return null;
        }

        return entered.Si;
    }
}
