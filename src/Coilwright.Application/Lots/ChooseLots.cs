using Coilwright.Analysis.Lots;

namespace Coilwright.Application.Lots;

/// <summary>A person asks what to order when.</summary>
public sealed class ChooseLots
{
    /// <summary>The lot, the point or the orders of least cost.</summary>
    /// <param name="demand">The question.</param>
    public LotAnswer Choose(Demand demand) => LotChoice.Answer(demand);
}
