using Coilwright.Workshop.Boards;

namespace Coilwright.Web.Views;

/// <summary>Where the thing to do about a line of the day is done.</summary>
public static class WorkAddress
{
    /// <summary>Its address.</summary>
    public static string Of(WorkLink link) =>
        link.Place switch
        {
            WorkPlace.Batch => $"/batches/{link.BatchId}",
            WorkPlace.Enter => $"/batches/{link.BatchId}/enter?tag={Uri.EscapeDataString(link.Name)}",
            WorkPlace.Winder => $"/batches/{link.BatchId}/wind?machine={Uri.EscapeDataString(link.Name)}",
            WorkPlace.Piece => $"/pieces/{Uri.EscapeDataString(link.Name)}",
            WorkPlace.Test => $"/test?piece={Uri.EscapeDataString(link.Name)}",
            WorkPlace.Spools => "/spools",
            _ => "/clocks",
        };
}
