using Coilwright.Workshop.Tracing;

namespace Coilwright.Web.Views;

/// <summary>Where the page of something found stands.</summary>
public static class HitAddress
{
    /// <summary>Its address; null when it has no page of its own.</summary>
    public static string? Of(TraceHit hit) =>
        (hit.Kind, hit.Id) switch
        {
            ("piece", _) => $"/pieces/{Uri.EscapeDataString(hit.Name)}",
            ("batch", { } id) => $"/batches/{id}",
            ("coil", { } id) => $"/batches/{id}/coils/{Uri.EscapeDataString(hit.Tag)}",
            ("recipe", { } id) => $"/recipes/{id}",
            ("spool" or "spool-lot", _) => "/spools",
            ("winder", _) => "/machines",
            ("customer", _) => "/shop",
            _ => null,
        };
}
