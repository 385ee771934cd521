using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.Features;
using Microsoft.Extensions.Primitives;

namespace Coilwright.Web.Hosting.Access;

/// <summary>Who did it is the account that is signed in, not a word that was typed, in every form that is sent.</summary>
public sealed class PersonOfAccount(RequestDelegate next)
{
    /// <summary>Fields that name who did it.</summary>
    private static readonly string[] s_fields = ["person", "limits-person"];

    public async Task InvokeAsync(HttpContext context)
    {
        if (context.SignedIn() is { } person && context.Request.HasFormContentType)
        {
            IFormCollection form = await context.Request.ReadFormAsync(context.RequestAborted);
            Dictionary<string, StringValues> fields = form.ToDictionary(
                field => field.Key,
                field => field.Value,
                StringComparer.OrdinalIgnoreCase
            );
            foreach (string field in s_fields)
            {
                fields[field] = person.Name;
            }

            context.Features.Set<IFormFeature>(new FormFeature(new FormCollection(fields, form.Files)));
        }

        await next(context);
    }
}
