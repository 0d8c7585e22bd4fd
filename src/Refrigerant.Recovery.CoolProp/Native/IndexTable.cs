using System.Collections.Generic;

namespace Refrigerant.Recovery.CoolProp.Native;

/// <summary>The numbers by which one release of CoolProp knows its input pairs and parameters; they change between releases.</summary>
internal sealed unsafe class IndexTable
{
    private static readonly string[] PairNames =
    [
        "QT_INPUTS", "PQ_INPUTS", "PT_INPUTS", "DmassT_INPUTS", "DmassUmass_INPUTS", "HmassP_INPUTS", "PSmass_INPUTS",
    ];

    private static readonly string[] PropertyNames =
    [
        "T", "P", "Dmass", "Hmass", "Smass", "Phase", "molar_mass", "T_critical", "p_critical", "rhomass_critical", "T_reducing",
        "rhomolar_reducing", "T_min", "T_max", "P_max", "T_triple", "Cvmass", "Cpmass", "speed_of_sound", "viscosity",
    ];

    private readonly int[] _pairs = new int[PairNames.Length];
    private readonly int[] _properties = new int[PropertyNames.Length];

    public IndexTable(NativeApi api)
    {
        var unknown = new List<string>();
        lock (NativeApi.Gate)
        {
            for (int i = 0; i < PairNames.Length; i++)
            {
                fixed (byte* name = NativeText.Encode(PairNames[i]))
                {
                    _pairs[i] = Known(api.InputPairIndex(name), PairNames[i], unknown);
                }
            }

            for (int i = 0; i < PropertyNames.Length; i++)
            {
                fixed (byte* name = NativeText.Encode(PropertyNames[i]))
                {
                    _properties[i] = Known(api.ParameterIndex(name), PropertyNames[i], unknown);
                }
            }
        }

        Unknown = unknown;
    }

    /// <summary>The names that the library does not know.</summary>
    public IReadOnlyList<string> Unknown { get; }

    public int this[InputPair pair] => _pairs[(int)pair];

    public int this[Property property] => _properties[(int)property];

    public static string Name(InputPair pair) => PairNames[(int)pair];

    public static string Name(Property property) => PropertyNames[(int)property];

    private static int Known(int index, string name, List<string> unknown)
    {
        if (index < 0)
        {
            unknown.Add(name);
        }

        return index;
    }
}
