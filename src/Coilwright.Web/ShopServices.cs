using Coilwright.Workshop;
using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Machines;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.Stock;
using Coilwright.Workshop.Walls;

namespace Coilwright.Web;

/// <summary>Everything the pages call: the use cases of one shop, its records, and the clock.</summary>
public sealed record ShopServices(WindingRoom Winding, RecipeBook Recipes, IShopRecords Records, TimeProvider Time)
{
    /// <summary>The shop's winders.</summary>
    public MachinePark Machines { get; } = new(Records, Time);

    /// <summary>The shop's wire.</summary>
    public StockRoom Stock { get; } = new(Records, Time);

    /// <summary>The wall of charts.</summary>
    public WallRoom Walls { get; } = new(Records, new MachinePark(Records, Time));

    /// <summary>Batches while they are wound.</summary>
    public BatchRun Run { get; } = new(Records, Winding, new MachinePark(Records, Time), Time);

    /// <summary>Batches set up on their winders.</summary>
    public BatchSetUpService SetUps => new(Records, Run, Machines, Stock, Time);

    /// <summary>Pieces, from coils to customers.</summary>
    public PieceServices Pieces { get; } = new(Records, Winding, Time);
}
