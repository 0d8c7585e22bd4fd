using System;
using System.Collections.Generic;
using System.Linq;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Routing;
using Refrigerant.Recovery.Fluids;

namespace Refrigerant.Recovery.Calculators.Forms;

/// <summary>What the reader gave: the query of the page's address and nothing else, so that the address is a link to the answer.</summary>
public sealed class Inputs
{
    public const string PageKey = "page", FluidKey = "fluid", UnitsKey = "units";

    private const string MetricUnits = "si";

    private readonly NavigationManager _navigation;
    private Dictionary<string, string> _values;

    public Inputs(NavigationManager navigation)
    {
        _navigation = navigation;
        _values = Read(navigation.Uri);
        navigation.LocationChanged += (object? _, LocationChangedEventArgs change) =>
        {
            _values = Read(change.Location);
            Changed?.Invoke();
        };
    }

    /// <summary>The address changed.</summary>
    public event Action? Changed;

    public bool IsMetric => Text(UnitsKey) == MetricUnits;

    public Fluid Fluid => Fluid.Get(Text(FluidKey, "R-410A"));

    public string Text(string name, string initial = "") => _values.GetValueOrDefault(name, initial);

    public string Text(Field field) => Text(field.Name, field.InitialText(IsMetric));

    /// <summary>The value of a field in SI.</summary>
    /// <exception cref="FormatException">What was typed is no number.</exception>
    public double Number(Field field) => field.Parse(Text(field), IsMetric) ?? throw new FormatException($"{field.Label}: not a number.");

    public bool Is(string name) => Text(name) == "yes";

    public void Set(string name, string value) => Go(new Dictionary<string, string>(_values) { [name] = value });

    /// <summary>Changes the units; every number that was given is converted.</summary>
    public void SetMetric(bool metric)
    {
        Dictionary<string, string> values = new(_values) { [UnitsKey] = metric ? MetricUnits : "us" };
        foreach (Field field in Fields.All.Where(field => values.ContainsKey(field.Name)))
        {
            values[field.Name] = field.Parse(values[field.Name], IsMetric) is double si ? field.Text(si, metric) : values[field.Name];
        }

        Go(values);
    }

    /// <summary>The address of another page; what was given here goes along.</summary>
    public string Link(string page) => Query(new Dictionary<string, string>(_values) { [PageKey] = page });

    private void Go(Dictionary<string, string> values) => _navigation.NavigateTo(Query(values), replace: true);

    private static string Query(Dictionary<string, string> values) =>
        "?" + string.Join('&', values.Select(pair => $"{Uri.EscapeDataString(pair.Key)}={Uri.EscapeDataString(pair.Value)}"));

    private static Dictionary<string, string> Read(string address)
    {
        Dictionary<string, string> values = [];
        foreach (string pair in new Uri(address).Query.TrimStart('?').Split('&', StringSplitOptions.RemoveEmptyEntries))
        {
            string[] parts = pair.Split('=', 2);
            values[Uri.UnescapeDataString(parts[0])] = parts.Length > 1 ? Uri.UnescapeDataString(parts[1].Replace('+', ' ')) : string.Empty;
        }

        return values;
    }
}
