using System.Collections.Generic;

namespace Refrigerant.Recovery.CoolProp.Native;

/// <summary>Looks exported functions up and remembers those that are missing.</summary>
internal sealed class ExportTable
{
    private readonly NativeModule _module;
    private readonly List<string> _missing = [];

    public ExportTable(NativeModule module) => _module = module;

    /// <summary>The names asked for that the library does not export.</summary>
    public IReadOnlyList<string> Missing => _missing;

    public nint this[string name]
    {
        get
        {
            nint address = _module.Export(name);
            if (address == 0)
            {
                _missing.Add(name);
            }

            return address;
        }
    }
}
