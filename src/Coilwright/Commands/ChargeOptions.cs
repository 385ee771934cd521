using System.CommandLine;
using Coilwright.Workshop.Magnets;

namespace Coilwright.Commands;

/// <summary>What is typed of the charge of magnets.</summary>
internal sealed class ChargeOptions
{
    private readonly Option<string> _charge = ShopAction.Text(
        "--charge",
        "What magnets are charged to: full, a share of full (80%), or the field over the poles (900G)"
    );
    private readonly Option<string> _jig = ShopAction.Text("--jig", "Distance of the probe for a field, 1mm unless said"),
        _charger = ShopAction.Text("--charger", "With which charger or by what means");

    /// <summary>The level alone.</summary>
    public Option<string> Level => _charge;

    public IReadOnlyList<Option> All => [_charge, _jig, _charger];

    public ChargeEntry Read(ParseResult parsed) =>
        new(parsed.GetRequiredValue(_charge), parsed.GetRequiredValue(_jig), parsed.GetRequiredValue(_charger));
}
