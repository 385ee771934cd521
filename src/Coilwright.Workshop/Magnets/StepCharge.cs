using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Pieces;
using Coilwright.Workshop.Rules;
using Coilwright.Workshop.Steps;

namespace Coilwright.Workshop.Magnets;

/// <summary>
/// What was said of the charge with a step on one or several pieces, held against their recipes and turned into what their events carry.
/// </summary>
internal sealed class StepCharge
{
    private readonly ChargeEntry _entry;
    private readonly string _step;
    private readonly MagnetLevel? _level;
    private readonly ShopRules _rules;
    private readonly List<Problem> _problems;

    private StepCharge(ChargeEntry entry, string step, ShopRules rules, List<Problem> problems) =>
        (_entry, _step, _rules, _problems, _level) = (entry, step, rules, problems, ChargeReader.Read(entry, problems));

    /// <summary>Reads it; every problem is added.</summary>
    public static StepCharge Read(
        ChargeEntry? entry,
        string step,
        IReadOnlyList<PieceSnapshot> lives,
        ShopRules rules,
        List<Problem> problems
    )
    {
        StepCharge told = new(entry ?? ChargeEntry.Nothing, step, rules, problems);
        if (!told._entry.IsEmpty && !lives.Any(life => life.Plans.Any(plan => plan.Name == step && plan.ChargesMagnets)))
        {
            problems.Add(new Problem("charge", $"magnets are not charged in {step}", told._entry.Level, "leave it empty"));
        }

        return told;
    }

    /// <summary>A step ends with this: refused where the recipe asks for another charge.</summary>
    /// <returns>What the event of the end says of the charge; null when nobody said one.</returns>
    public ChargeAsSaid? End(StepPlan? plan, PieceSnapshot life)
    {
        if (plan is not { ChargesMagnets: true })
        {
            return null;
        }

        bool misread = _level is null && _entry.Level.Trim().Length > 0; // told already
        if (!misread && ChargeRule.Refuse(life.Piece.Serial, plan.Charge, _level, _rules) is { } refused)
        {
            _problems.Add(refused);
        }

        return _level is { } level ? ChargeAsSaid.Of(level, _entry) : null;
    }

    /// <summary>A step only begins: what it leads to is said when it ends.</summary>
    public void RefuseBeforeEnd(PieceSnapshot life)
    {
        if (!_entry.IsEmpty && life.Plans.Any(plan => plan.Name == _step && plan.ChargesMagnets))
        {
            _problems.Add(
                new Problem(
                    "charge",
                    $"{life.Piece.Serial}: {_step} takes its time; the charge is said when it ends",
                    _entry.Level,
                    "leave it empty until then"
                )
            );
        }
    }
}
