/* kinds.h: every kind of record
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "record/check.h"
#include "record/mark.h"
#include "record/material.h"
#include "record/measurement.h"
#include "record/pairing.h"
#include "record/person.h"
#include "record/photo.h"
#include "record/piece.h"
#include "record/proof.h"
#include "record/remedy.h"
#include "record/reminder.h"
#include "record/setting.h"
#include "record/stone-group.h"
#include "record/visit.h"
