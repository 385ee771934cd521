using Microsoft.AspNetCore.Http;

namespace Coilwright.Web.Endpoints;

/// <summary>Which form was kept, told to the page that comes next so that the browser forgets its drafts.</summary>
internal static class DoneForm
{
    /// <summary>The last part of the address that a form was sent to, for example "ship".</summary>
    public static string Of(HttpRequest request) => Uri.EscapeDataString((request.Path.Value ?? "").Split('/')[^1]);
}
