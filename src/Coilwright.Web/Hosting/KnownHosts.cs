using System.Net;
using Microsoft.AspNetCore.Http;

namespace Coilwright.Web.Hosting;

/// <summary>
/// Answers requests for this computer's own names and those that the person named, and no other. A page elsewhere can let its own
/// name point at this computer; the browser then takes the shop's pages for that page's own, and its scripts could read and change them.
/// </summary>
public sealed class KnownHosts(RequestDelegate next, IReadOnlyList<string> named)
{
    public Task InvokeAsync(HttpContext context)
    {
        if (IsKnown(context.Request.Host.Host, named))
        {
            return next(context);
        }

        return Refusal.WriteAsync(
            context,
            StatusCodes.Status421MisdirectedRequest,
            "host",
            "This shop does not answer under the name of this address.",
            "http://localhost or http://127.0.0.1 on this computer; another name is allowed with: coilwright serve --host NAME"
        );
    }

    /// <summary>True for localhost, an address of this computer alone, or a name that the person gave.</summary>
    public static bool IsKnown(string host, IReadOnlyList<string> named)
    {
        string name = host.TrimEnd('.');
        return string.Equals(name, "localhost", StringComparison.OrdinalIgnoreCase)
            || IsOwnAddress(name)
            || named.Contains(name, StringComparer.OrdinalIgnoreCase);
    }

    /// <summary>True for 127.x.x.x and [::1] as browsers write them; other spellings are names that somebody made up.</summary>
    private static bool IsOwnAddress(string name)
    {
        bool bracketed = name is ['[', .., ']'];
        return IPAddress.TryParse(bracketed ? name[1..^1] : name, out IPAddress? address)
            && IPAddress.IsLoopback(address)
            && name == (bracketed ? $"[{address}]" : address.ToString());
    }
}
