using Coilwright.Workshop;
using Coilwright.Workshop.Machines;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Web;

/// <summary>Everything the pages call: the use cases of one shop, its records, and the clock.</summary>
public sealed record ShopServices(WindingRoom Winding, RecipeBook Recipes, IShopRecords Records, TimeProvider Time)
{
    /// <summary>The shop's winders.</summary>
    public MachinePark Machines { get; } = new(Records, Time);
}
