using Coilwright.Application.Backups;
using Coilwright.Application.Boards;
using Coilwright.Workshop;
using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Batches.Summaries;
using Coilwright.Workshop.ControlCharts;
using Coilwright.Workshop.Machines;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.Stock;
using Microsoft.Extensions.DependencyInjection;

namespace Coilwright.Application.Composition;

/// <summary>The rules of one shop by their names, its records, and the clock; each is what was registered.</summary>
public sealed class ShopServices(IServiceProvider services, IShopRecords records, TimeProvider time)
{
    /// <summary>The shop's records.</summary>
    public IShopRecords Records => records;

    /// <summary>The clock.</summary>
    public TimeProvider Time => time;

    /// <summary>Coils and their readings.</summary>
    public WindingService Winding => services.GetRequiredService<WindingService>();

    /// <summary>Recipes and their revisions.</summary>
    public RecipeService Recipes => services.GetRequiredService<RecipeService>();

    /// <summary>The shop's winders.</summary>
    public MachineService Machines => services.GetRequiredService<MachineService>();

    /// <summary>The shop's wire.</summary>
    public StockService Stock => services.GetRequiredService<StockService>();

    /// <summary>The wall of charts.</summary>
    public ControlChartService Walls => services.GetRequiredService<ControlChartService>();

    /// <summary>Batches while they are wound.</summary>
    public BatchEventService Run => services.GetRequiredService<BatchEventService>();

    /// <summary>How batches stand, in short.</summary>
    public BatchSummaries Summaries => services.GetRequiredService<BatchSummaries>();

    /// <summary>Batches set up on their winders.</summary>
    public BatchSetUpService SetUps => services.GetRequiredService<BatchSetUpService>();

    /// <summary>What needs a person today.</summary>
    public ReadToday Today => services.GetRequiredService<ReadToday>();

    /// <summary>Backups of the shop.</summary>
    public BackUpShop BackUp => services.GetRequiredService<BackUpShop>();

    /// <summary>Pieces, from coils to customers.</summary>
    public PieceServices Pieces => services.GetRequiredService<PieceServices>();
}
