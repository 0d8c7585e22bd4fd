using Refrigerant.Recovery.Fluids.Helmholtz;

namespace Refrigerant.Recovery.Fluids.Data;

/// <summary>R-125, pentafluoroethane. The constants are those of the publication in <see cref="PureFluidData.Source"/>.</summary>
internal static class R125
{
    public static PureFluidData Create() => new()
    {
        Designation = "R-125",
        Name = "pentafluoroethane",
        CasNumber = "354-33-6",
        Source = "Eric W. Lemmon and Richard T Jacobsen, (2005), A New Functional Form and New Fitting Techniques for "
            + "Equations of State with Application to Pentafluoroethane (HFC-125), J. Phys. Chem. Ref. Data, vol. "
            + "34, 69-108, doi:10.1063/1.1797813",
        MolarMass = 0.1200214,
        GasConstant = 8.314472,
        ReducingTemperature = 339.173,
        ReducingMolarDensity = 4779,
        CriticalTemperature = 339.173,
        CriticalPressure = 3617700,
        CriticalMolarDensity = 4779,
        AcentricFactor = 0.3052,
        MinimumTemperature = 172.52,
        MaximumTemperature = 500,
        MaximumPressure = 60000000,
        IdealGas = new IdealHelmholtz(
            logTau: -1,
            tauLogTau: 0,
            powers: new double[,]
            {
                { -49.8651, -0.1 },
            },
            planckEinstein: new double[,]
            {
                { 2.303, 0.92578 },
                { 5.086, 2.22895 },
                { 7.3, 5.03283 },
            }),
        Residual = new ResidualTerms
        {
            DoubleExponential = new double[,]
            {
                { 5.28076, 1, 0.669, 0, 0 },
                { -8.67658, 1, 1.05, 0, 0 },
                { 0.7501127, 1, 2.75, 0, 0 },
                { 0.7590023, 2, 0.956, 0, 0 },
                { 0.01451899, 4, 1, 0, 0 },
                { 4.777189, 1, 2, 1, 0 },
                { -3.330988, 1, 2.75, 1, 0 },
                { 3.775673, 2, 2.38, 1, 0 },
                { -2.290919, 2, 3.37, 1, 0 },
                { 0.8888268, 3, 3.47, 1, 0 },
                { -0.6234864, 4, 2.63, 1, 0 },
                { -0.04127263, 5, 3.45, 1, 0 },
                { -0.08455389, 1, 0.72, 2, 0 },
                { -0.1308752, 5, 4.23, 2, 0 },
                { 0.008344962, 1, 0.2, 3, 0 },
                { -1.532005, 2, 4.5, 2, 1.7 },
                { -0.05883649, 3, 29, 3, 7 },
                { 0.02296658, 5, 24, 3, 6 },
            },
        },
        SaturationViscosity = new double[,]
        {
            { 201, 0.00061931, 8.6778E-06 },
            { 212.64, 0.00050366, 9.1792E-06 },
            { 224.27, 0.00041628, 9.677E-06 },
            { 235.91, 0.00034798, 1.0176E-05 },
            { 247.54, 0.00029323, 1.0682E-05 },
            { 259.18, 0.00024826, 1.1208E-05 },
            { 270.82, 0.00021056, 1.1773E-05 },
            { 282.45, 0.00017831, 1.2408E-05 },
            { 294.09, 0.00015005, 1.3171E-05 },
            { 305.73, 0.00012464, 1.417E-05 },
            { 317.36, 0.00010092, 1.5647E-05 },
            { 329, 7.6842E-05, 1.8392E-05 },
        },
    };
}
