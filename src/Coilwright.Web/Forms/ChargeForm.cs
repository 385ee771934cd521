using Coilwright.Workshop.Magnets;

namespace Coilwright.Web.Forms;

/// <summary>The fields of the charge of magnets.</summary>
public static class ChargeForm
{
    /// <summary>What was typed.</summary>
    public static ChargeEntry Read(FormValues typed) => new(typed["charge"], typed["chargeJig"], typed["charger"]);
}
