using System;
using Xunit;

namespace Refrigerant.Recovery.CoolProp.Tests;

/// <summary>A test on a real CoolProp library; skipped, with the reason, where the environment names none.</summary>
public sealed class CoolPropFactAttribute : FactAttribute
{
    /// <summary>Skips where <see cref="CoolPropLibrary.PathVariable"/> is not set; a path that cannot be loaded fails the test.</summary>
    public CoolPropFactAttribute() => Skip =
        string.IsNullOrWhiteSpace(Environment.GetEnvironmentVariable(CoolPropLibrary.PathVariable))
            ? $"{CoolPropLibrary.PathVariable} is not set: it must hold the path of CoolProp's shared library."
            : null;
}
