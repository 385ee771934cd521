using Coilwright.Workshop;
using Coilwright.Workshop.Batches;
using Coilwright.Workshop.ControlCharts;
using Coilwright.Workshop.Machines;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.Stock;

namespace Coilwright.Web;

/// <summary>Everything the pages call: the use cases of one shop, its records, and the clock.</summary>
public sealed record ShopServices(WindingService Winding, RecipeService Recipes, IShopRecords Records, TimeProvider Time)
{
    /// <summary>The shop's winders.</summary>
    public MachineService Machines { get; } = new(Records, Time);

    /// <summary>The shop's wire.</summary>
    public StockService Stock { get; } = new(Records, Time, Winding.Dossiers);

    /// <summary>The wall of charts.</summary>
    public ControlChartService Walls { get; } = new(Records, new MachineService(Records, Time), Winding.Dossiers);

    /// <summary>Batches while they are wound.</summary>
    public BatchEventService Run { get; } = new(Records, Winding, new MachineService(Records, Time), Time);

    /// <summary>Batches set up on their winders.</summary>
    public BatchSetUpService SetUps => new(Records, Run, Machines, Stock, Time);

    /// <summary>Pieces, from coils to customers.</summary>
    public PieceServices Pieces { get; } = new(Records, Winding, Time);
}
