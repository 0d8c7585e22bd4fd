namespace Refrigerant.Recovery.CoolProp.Native;

/// <summary>CoolProp's C interface where C <c>long</c> has 32 bits: Windows.</summary>
internal sealed unsafe class NativeApiLong32 : NativeApi
{
    private readonly delegate* unmanaged[Cdecl]<byte*, int> _parameterIndex;
    private readonly delegate* unmanaged[Cdecl]<byte*, int> _inputPairIndex;
    private readonly delegate* unmanaged[Cdecl]<byte*, byte*, int, int> _globalText;
    private readonly delegate* unmanaged[Cdecl]<byte*, byte*, byte*, int, int> _fluidText;
    private readonly delegate* unmanaged[Cdecl]<byte*, byte*, int*, byte*, int, int> _create;
    private readonly delegate* unmanaged[Cdecl]<int, int*, byte*, int, void> _free;
    private readonly delegate* unmanaged[Cdecl]<int, byte*, int*, byte*, int, void> _fluidNames;
    private readonly delegate* unmanaged[Cdecl]<int, double*, int, int*, byte*, int, void> _setFractions;
    private readonly delegate* unmanaged[Cdecl]<int, double*, int, int*, int*, byte*, int, void> _moleFractions;
    private readonly delegate* unmanaged[Cdecl]<int, byte*, double*, int, int*, int*, byte*, int, void> _saturatedMoleFractions;
    private readonly delegate* unmanaged[Cdecl]<int, int, double, double, int*, byte*, int, void> _update;
    private readonly delegate* unmanaged[Cdecl]<int, byte*, int*, byte*, int, void> _specifyPhase;
    private readonly delegate* unmanaged[Cdecl]<int, int*, byte*, int, void> _unspecifyPhase;
    private readonly delegate* unmanaged[Cdecl]<int, int, int*, byte*, int, double> _output;
    private readonly delegate* unmanaged[Cdecl]<int, byte*, int, int*, byte*, int, double> _saturatedOutput;
    private readonly delegate* unmanaged[Cdecl]<int, int, int, int, int*, byte*, int, double> _derivative;

    public NativeApiLong32(ExportTable exports)
    {
        _parameterIndex = (delegate* unmanaged[Cdecl]<byte*, int>)exports["get_param_index"];
        _inputPairIndex = (delegate* unmanaged[Cdecl]<byte*, int>)exports["get_input_pair_index"];
        _globalText = (delegate* unmanaged[Cdecl]<byte*, byte*, int, int>)exports["get_global_param_string"];
        _fluidText = (delegate* unmanaged[Cdecl]<byte*, byte*, byte*, int, int>)exports["get_fluid_param_string"];
        _create = (delegate* unmanaged[Cdecl]<byte*, byte*, int*, byte*, int, int>)exports["AbstractState_factory"];
        _free = (delegate* unmanaged[Cdecl]<int, int*, byte*, int, void>)exports["AbstractState_free"];
        _fluidNames = (delegate* unmanaged[Cdecl]<int, byte*, int*, byte*, int, void>)exports["AbstractState_fluid_names"];
        _setFractions = (delegate* unmanaged[Cdecl]<int, double*, int, int*, byte*, int, void>)exports["AbstractState_set_fractions"];
        _moleFractions = (delegate* unmanaged[Cdecl]<int, double*, int, int*, int*, byte*, int, void>)exports["AbstractState_get_mole_fractions"];
        _saturatedMoleFractions =
            (delegate* unmanaged[Cdecl]<int, byte*, double*, int, int*, int*, byte*, int, void>)exports["AbstractState_get_mole_fractions_satState"];
        _update = (delegate* unmanaged[Cdecl]<int, int, double, double, int*, byte*, int, void>)exports["AbstractState_update"];
        _specifyPhase = (delegate* unmanaged[Cdecl]<int, byte*, int*, byte*, int, void>)exports["AbstractState_specify_phase"];
        _unspecifyPhase = (delegate* unmanaged[Cdecl]<int, int*, byte*, int, void>)exports["AbstractState_unspecify_phase"];
        _output = (delegate* unmanaged[Cdecl]<int, int, int*, byte*, int, double>)exports["AbstractState_keyed_output"];
        _saturatedOutput = (delegate* unmanaged[Cdecl]<int, byte*, int, int*, byte*, int, double>)exports["AbstractState_keyed_output_satState"];
        _derivative = (delegate* unmanaged[Cdecl]<int, int, int, int, int*, byte*, int, double>)exports["AbstractState_first_partial_deriv"];
    }

    public override int ParameterIndex(byte* name) => (int)_parameterIndex(name);

    public override int InputPairIndex(byte* name) => (int)_inputPairIndex(name);

    public override bool GlobalText(byte* parameter, byte* output, int length) => _globalText(parameter, output, length) == 1;

    public override bool FluidText(byte* fluid, byte* parameter, byte* output, int length) => _fluidText(fluid, parameter, output, length) == 1;

    public override nint Create(byte* backend, byte* fluids, int* error, byte* message, int length)
    {
        int code = 0;
        int handle = _create(backend, fluids, &code, message, length);
        *error = (int)code;
        return handle;
    }

    public override void Free(nint handle, int* error, byte* message, int length)
    {
        int code = 0;
        _free((int)handle, &code, message, length);
        *error = (int)code;
    }

    public override void FluidNames(nint handle, byte* names, int* error, byte* message, int length)
    {
        int code = 0;
        _fluidNames((int)handle, names, &code, message, length);
        *error = (int)code;
    }

    public override void SetFractions(nint handle, double* fractions, int count, int* error, byte* message, int length)
    {
        int code = 0;
        _setFractions((int)handle, fractions, count, &code, message, length);
        *error = (int)code;
    }

    public override int MoleFractions(nint handle, double* fractions, int capacity, int* error, byte* message, int length)
    {
        int code = 0;
        int count = 0;
        _moleFractions((int)handle, fractions, capacity, &count, &code, message, length);
        *error = (int)code;
        return (int)count;
    }

    public override int SaturatedMoleFractions(
        nint handle, byte* side, double* fractions, int capacity, int* error, byte* message, int length)
    {
        int code = 0;
        int count = 0;
        _saturatedMoleFractions((int)handle, side, fractions, capacity, &count, &code, message, length);
        *error = (int)code;
        return (int)count;
    }

    public override void Update(nint handle, int pair, double first, double second, int* error, byte* message, int length)
    {
        int code = 0;
        _update((int)handle, pair, first, second, &code, message, length);
        *error = (int)code;
    }

    public override void SpecifyPhase(nint handle, byte* phase, int* error, byte* message, int length)
    {
        int code = 0;
        _specifyPhase((int)handle, phase, &code, message, length);
        *error = (int)code;
    }

    public override void UnspecifyPhase(nint handle, int* error, byte* message, int length)
    {
        int code = 0;
        _unspecifyPhase((int)handle, &code, message, length);
        *error = (int)code;
    }

    public override double Output(nint handle, int parameter, int* error, byte* message, int length)
    {
        int code = 0;
        double value = _output((int)handle, parameter, &code, message, length);
        *error = (int)code;
        return value;
    }

    public override double SaturatedOutput(nint handle, byte* side, int parameter, int* error, byte* message, int length)
    {
        int code = 0;
        double value = _saturatedOutput((int)handle, side, parameter, &code, message, length);
        *error = (int)code;
        return value;
    }

    public override double Derivative(nint handle, int of, int by, int at, int* error, byte* message, int length)
    {
        int code = 0;
        double value = _derivative((int)handle, of, by, at, &code, message, length);
        *error = (int)code;
        return value;
    }
}
