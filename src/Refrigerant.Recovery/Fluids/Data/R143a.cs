using Refrigerant.Recovery.Fluids.Helmholtz;

namespace Refrigerant.Recovery.Fluids.Data;

/// <summary>R-143a, 1,1,1-trifluoroethane. The constants are those of the publication in <see cref="PureFluidData.Source"/>.</summary>
internal static class R143a
{
    public static PureFluidData Create() => new()
    {
        Designation = "R-143a",
        Name = "1,1,1-trifluoroethane",
        CasNumber = "420-46-2",
        Source = "Eric W. Lemmon and Richard T. Jacobsen, (2000), An International Standard Formulation for the "
            + "Thermodynamic Properties of 1,1,1-Trifluoroethane (HFC-143a) for Temperatures From 161 to 450 K and "
            + "Pressures to 50 MPa, J. Phys. Chem. Ref. Data, vol. 29, 521-552, doi:10.1063/1.1318909",
        MolarMass = 0.08404099999999999,
        GasConstant = 8.314472,
        ReducingTemperature = 345.857,
        ReducingMolarDensity = 5128.45,
        CriticalTemperature = 345.857,
        CriticalPressure = 3761000,
        CriticalMolarDensity = 5128.45,
        AcentricFactor = 0.261489646224,
        MinimumTemperature = 161.34,
        MaximumTemperature = 650,
        MaximumPressure = 150000000,
        IdealGas = new IdealHelmholtz(
            logTau: -1,
            tauLogTau: 0,
            powers: new double[,]
            {
                { -16.591049152078973, -0.33 },
            },
            planckEinstein: new double[,]
            {
                { 4.4402, 5.178440800677737 },
                { 3.7515, 2.379596191489546 },
            }),
        Residual = new ResidualTerms
        {
            Power = new double[,]
            {
                { 7.7736443, 1, 0.67, 0 },
                { -8.70185, 1, 0.833, 0 },
                { -0.27779799, 1, 1.7, 0 },
                { 0.1460922, 2, 1.82, 0 },
                { 0.0089581616, 5, 0.35, 0 },
                { -0.20552116, 1, 3.9, 1 },
                { 0.10653258, 3, 0.95, 1 },
                { 0.023270816, 5, 0, 1 },
                { -0.013247542, 7, 1.19, 1 },
                { -0.04279387, 1, 7.2, 2 },
                { 0.36221685, 2, 5.9, 2 },
                { -0.25671899, 2, 7.65, 2 },
                { -0.092326113, 3, 7.5, 2 },
                { 0.083774837, 4, 7.45, 2 },
                { 0.017128445, 2, 15.5, 3 },
                { -0.01725611, 3, 22, 3 },
                { 0.0049080492, 5, 19, 3 },
            },
        },
        SaturationViscosity = new double[,]
        {
            { 201, 0.00028205, 7.4847E-06 },
            { 213.23, 0.00024708, 7.9756E-06 },
            { 225.45, 0.00021885, 8.4556E-06 },
            { 237.68, 0.00019522, 8.9075E-06 },
            { 249.9, 0.00017487, 9.3336E-06 },
            { 262.13, 0.00015684, 9.7808E-06 },
            { 274.35, 0.00014051, 1.0286E-05 },
            { 286.58, 0.00012534, 1.0885E-05 },
            { 298.8, 0.00011093, 1.1638E-05 },
            { 311.03, 9.6817E-05, 1.2661E-05 },
            { 323.26, 8.2394E-05, 1.4219E-05 },
            { 335.48, 6.6207E-05, 1.7156E-05 },
        },
    };
}
