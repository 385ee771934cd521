using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using Microsoft.AspNetCore.Http;

namespace Coilwright.Web.Forms;

/// <summary>Puts a posted settings form into its document. What the form does not have stays as it was.</summary>
public static class SettingsForm
{
    private static readonly JsonSerializerOptions s_indented = new()
    {
        WriteIndented = true,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    /// <summary>The document as text.</summary>
    public static string Write(JsonNode document) => document.ToJsonString(s_indented);

    /// <summary>Puts single fields in; an emptied one is taken out, and with it a group that has nothing left.</summary>
    public static void Put(JsonObject document, IEnumerable<SettingField> fields, IFormCollection form)
    {
        foreach (SettingField field in fields.Where(field => form.ContainsKey(field.Name)))
        {
            JsonPath.Set(document, field.Path, field.NodeOf(form[field.Name].ToString()));
        }

        DropEmpty(document);
    }

    /// <summary>Puts a list in: every row in which something was typed, in their order.</summary>
    public static void Put(JsonObject document, SettingRows rows, IFormCollection form)
    {
        JsonArray entries = [];
        for (int index = 0; rows.At(index).Any(field => form.ContainsKey(field.Path)); index++)
        {
            SettingField[] fields = [.. rows.At(index)];
            if (fields.Any(field => field.Choices.Count == 0 && form[field.Path].ToString().Trim().Length > 0))
            {
                entries.Add((JsonNode)Entry(rows, fields, form));
            }
        }

        JsonPath.Set(document, rows.Path, entries.Count > 0 ? entries : null);
        DropEmpty(document);
    }

    private static JsonObject Entry(SettingRows rows, SettingField[] fields, IFormCollection form)
    {
        JsonObject entry = [];
        foreach ((SettingField column, SettingField field) in rows.Columns.Zip(fields))
        {
            if (field.NodeOf(form[field.Path].ToString()) is { } node)
            {
                entry[column.Path] = node;
            }
        }

        return entry;
    }

    private static void DropEmpty(JsonObject document)
    {
        foreach (string name in document.Where(one => one.Value is JsonObject { Count: 0 }).Select(one => one.Key).ToArray())
        {
            document.Remove(name);
        }
    }
}
