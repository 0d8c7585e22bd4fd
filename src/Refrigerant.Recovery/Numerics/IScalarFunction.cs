namespace Refrigerant.Recovery.Numerics;

/// <summary>A real function of one variable; implemented by structs, so that a solver neither boxes nor allocates.</summary>
internal interface IScalarFunction
{
    double Value(double x);
}
