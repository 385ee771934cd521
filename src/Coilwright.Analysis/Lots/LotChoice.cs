using System.Diagnostics;

namespace Coilwright.Analysis.Lots;

/// <summary>What to order when, for every kind of question.</summary>
public static class LotChoice
{
    /// <summary>The answer.</summary>
    /// <param name="demand">The question.</param>
    public static LotAnswer Answer(Demand demand) =>
        demand switch
        {
            EconomicDemand steady => EconomicLot.Answer(steady),
            DynamicDemand periods => DynamicLots.Answer(periods),
            OneTimeDemand once => OneTimeLot.Answer(once),
            ReorderDemand watched => ReorderLot.Answer(watched),
            _ => throw new UnreachableException(),
        };
}
